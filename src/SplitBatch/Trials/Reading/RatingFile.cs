using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// Ratings of a panel as a file, <c>ratings-main.csv</c>: one row for each cup, by the code on it, and one column for each attribute,
/// as <c>taster, code, bitterness, liking</c>. Tasters rate blind; the key says which beer it was.
/// </summary>
internal static class RatingFile
{
    private static readonly string[] Own = ["taster", "session", "set", "code", "comment", "note"];

    /// <summary>The file of a panel's ratings.</summary>
    public static string NameOf(string panel) => $"ratings-{Guard.NotBlank(panel)}.csv";

    /// <summary>Each taster's rating of each attribute in both beers: the mean where a taster rated several cups of one beer.</summary>
    /// <param name="table">The file.</param>
    /// <param name="scored">The panel, counted by its key: who answered right, and whose ballots count.</param>
    /// <param name="leftOut">Takes a remark for each taster whose ratings cannot be used.</param>
    internal static IReadOnlyList<Rating> Read(CsvTable table, ScoredPanel scored, List<string> leftOut)
    {
        if (!table.Require("taster", "code")) return [];
        string[] attributes = [.. table.Columns.Select(column => column.Name)
            .Where(name => name.Length > 0 && !Own.Contains(name, StringComparer.OrdinalIgnoreCase))];
        if (attributes.Length == 0)
        {
            table.Faults
                .Add(new Fault(table.File, "The file has no column with an attribute.")
                {
                    Accepted = "one column for each attribute beside taster and code, as bitterness or liking",
                });
            return [];
        }

        var given = new List<(string Taster, string Attribute, int Set, string Code, Side Beer, double Value)>();
        foreach (var row in table.Rows)
        {
            if (row.Text("taster") is not { } taster || row.Text("code") is not { } code) continue;
            if (CupFinder.Find(scored.Plan, taster, code, row.OptionalWhole("set", 1), out var problem) is not { } found)
            {
                row.Refuse("code", problem, "the code of a cup that this taster was served");
                continue;
            }

            foreach (var attribute in attributes)
            {
                if (row.OptionalNumber(attribute) is not { } value) continue;
                if (given.Exists(g => g.Taster == found.Set.Taster && g.Attribute == attribute && g.Set == found.Set.Number
                    && g.Code == found.Cup.Code))
                {
                    row.Refuse(attribute, $"{taster} rated {attribute} of cup {found.Cup.Code} in an earlier row already.",
                        "each cup once");
                    continue;
                }

                given.Add((found.Set.Taster, attribute, found.Set.Number, found.Cup.Code, found.Cup.Beer, value));
            }
        }

        var results = scored.PerTaster.ToDictionary(taster => taster.Taster);
        var ratings = new List<Rating>();
        foreach (var group in given.GroupBy(g => (g.Attribute, g.Taster)))
        {
            double[] a = [.. group.Where(g => g.Beer == Side.A).Select(g => g.Value)],
                b = [.. group.Where(g => g.Beer == Side.B).Select(g => g.Value)];
            var result = results[group.Key.Taster];
            if (result.Counted == 0)
                leftOut.Add($"The ratings of {group.Key.Taster} are left out, because no ballot of this taster counts.");
            else if (a.Length == 0 || b.Length == 0)
                leftOut.Add($"The rating of {group.Key.Attribute} by {group.Key.Taster} is left out, because only one of the beers "
                    + $"was rated.");
            else ratings.Add(
                new Rating(group.Key.Taster, group.Key.Attribute, a.Average(), b.Average(), result.Correct == result.Counted));
        }

        return ratings;
    }
}
