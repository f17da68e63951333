using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// Tasters' words about single cups as a file, <c>comments-main.csv</c>: taster, code, comment. The key says which beer it was.
/// </summary>
internal static class CommentFile
{
    /// <summary>The file of a panel's comments.</summary>
    public static string NameOf(string panel) => $"comments-{Guard.NotBlank(panel)}.csv";

    /// <summary>The comments with their beers, those of tasters whose ballots do not count left out.</summary>
    /// <param name="table">The file.</param>
    /// <param name="scored">The panel, counted by its key.</param>
    internal static IReadOnlyList<Comment> Read(CsvTable table, ScoredPanel scored)
    {
        if (!table.Require("taster", "code", "comment")) return [];
        var counted = scored.PerTaster.Where(taster => taster.Counted > 0).Select(taster => taster.Taster).ToHashSet();
        var comments = new List<Comment>();
        foreach (var row in table.Rows)
        {
            if (row.Text("taster") is not { } taster || row.Text("code") is not { } code
                || row.Optional("comment") is not { } words) continue;
            if (CupFinder.Find(scored.Plan, taster, code, row.OptionalWhole("set", 1), out var problem) is not { } found)
                row.Refuse("code", problem, "the code of a cup that this taster was served");
            else if (counted.Contains(found.Set.Taster)) comments.Add(new Comment(found.Set.Taster, found.Cup.Beer, words));
        }

        return comments;
    }
}
