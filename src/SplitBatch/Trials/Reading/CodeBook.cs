using System.Text;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using static System.FormattableString;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// Who gets which codes, and not which beer is in which cup: all that somebody who serves or enters ballots has to know. Where the key is
/// kept apart, the trial folder holds this instead, as <c>codes-main.csv</c>.
/// </summary>
public sealed class CodeBook
{
    private const string Header = "panel,protocol,session,server,taster,replicate,set,position,code\n";

    // With beers that are made up where the key is elsewhere; no count ever leaves this class.
    private readonly ServingPlan plan;

    private CodeBook(ServingPlan plan) => this.plan = plan;

    /// <summary>Sets served.</summary>
    public int Sets => plan.Sets.Count;

    /// <summary>The tasters in seat order, each with the number of sets.</summary>
    public IReadOnlyList<(string Taster, int Sets)> Tasters =>
        [.. plan.Sets.GroupBy(set => set.Taster).Select(group => (group.Key, group.Count()))];

    /// <summary>The file of a panel's codes.</summary>
    public static string NameOf(string panel) => $"codes-{Guard.NotBlank(panel)}.csv";

    /// <summary>The codes of a key.</summary>
    public static CodeBook Of(ServingPlan key) => new(key ?? throw new ArgumentNullException(nameof(key)));

    /// <summary>The text of the file: the key without its beers.</summary>
    internal static string Write(ServingPlan key)
    {
        var text =
            new StringBuilder("# Who gets which codes. The key that says which beer is in which cup is kept elsewhere until the panel is "
                + "closed.\n").Append(Header);
        foreach (var row in key.Key)
        {
            text.Append(Invariant($"{CsvText.Cell(row.Panel)},{CsvText.Cell(row.Protocol)},{row.Session},{CsvText.Cell(row.Server)},")
                + Invariant($"{CsvText.Cell(row.Taster)},{row.Replicate},{row.Set},{row.Position},{row.Code}\n"));
        }

        return text.ToString();
    }

    /// <summary>Reads the file; null where it cannot be used, and the reason is a fault.</summary>
    internal static CodeBook? Read(CsvTable table)
    {
        if (!table.Require("panel", "protocol", "taster", "set", "position", "code")) return null;
        var rows = new List<ServingKeyRow>();
        foreach (var row in table.Rows)
        {
            string? panel = row.Text("panel"), name = row.Text("protocol"), taster = row.Text("taster"), code = row.Text("code");
            int? set = row.OptionalWhole("set", 1), position = row.OptionalWhole("position", 0);
            if (panel is null || name is null || taster is null || code is null || set is null || position is null) return null;
            if (!Protocol.TryParse(name, out var protocol, out var problem))
            {
                row.Refuse("protocol", problem, null);
                return null;
            }

            var order = SetDesign.For(protocol).Orders[0];
            var beer = position == 0 ? order.Reference ?? Side.A : order.Beers.ElementAtOrDefault(position.Value - 1);
            rows.Add(new(panel, protocol.Name, row.OptionalWhole("session", 1) ?? 1, row.Optional("server") ?? "S1", taster,
                row.OptionalWhole("replicate", 1) ?? 1, set.Value, position.Value, code, beer));
        }

        return table.Rows.Count == 0 ? null : table.Rows[0].Make("set", () => new CodeBook(ServingKey.ToPlan(rows)));
    }

    /// <summary>Why a ballot is none that anybody could have handed in: no such taster, set or code; null where somebody could.</summary>
    internal string? Refusal(Ballot ballot) => plan.Score([ballot]).Ballots[0].Notes
        .FirstOrDefault(note => note.Issue is BallotIssue.UnknownTaster or BallotIssue.UnknownCode or BallotIssue.UnknownSet)?.Text;

    /// <summary>
    /// The ballots beside the sets: who has answered, and what is wrong with single ballots. It says nothing of right and wrong.
    /// </summary>
    internal (IReadOnlyList<ServedSet> StillOut, IReadOnlyList<ScoredBallot> Remarkable) Against(IEnumerable<Ballot> ballots,
        BallotRules rules)
    {
        var scored = plan.Score(ballots, rules);
        return (scored.Missing, scored.Remarkable);
    }
}
