using System.ComponentModel;
using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Phrases;
using SplitBatch.Lab;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of a trial as a whole.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class TrialTables
{
    /// <summary>What is asked, what is changed and what is held equal.</summary>
    /// <param name="trial">The trial.</param>
    public static Table Table(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var about = trial.Description;
        List<(string What, string Words, string? Log)> rows = [("question", about.Question, null), ("why it matters", about.Why, null),
            .. OfDesign(trial)];
        return InWords(rows, about.Title, about.Invented ? "Invented data: an example, not a finding about beer." : "");
    }

    /// <summary>The design without the question: what is changed, what is held equal, and what would change the brewer's mind.</summary>
    /// <param name="trial">The trial.</param>
    public static Table TableOfChanges(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return InWords(OfDesign(trial), "The design", "");
    }

    private static IEnumerable<(string What, string Words, string? Log)> OfDesign(Trial trial) =>
    [
        ("the one variable", trial.Description.Variable, null),
        ("half A", trial.Description.Beers[Side.A], null),
        ("half B", trial.Description.Beers[Side.B], null),
        .. trial.MeantEqual
            .Select((meant, i) => (i == 0 ? "meant to be equal" : "", meant.Statement, (string?)Phrasebook.ByTheLog(meant))),
        ("what would change my mind", trial.Description.WouldChangeMyMind, null),
    ];

    private static Table InWords(IEnumerable<(string What, string Words, string? Log)> rows, string caption, string note) =>
        TableOf.Each(rows.Where(row => row.Words.Length > 0), caption)
            .Text("part", row => row.What)
            .Text("in words", row => row.Words)
            .Text("by the batch log", row => row.Log)
            .Note(note)
            .ToTable();

    /// <summary>The two halves line by line: the same, within what the instruments can tell, a confound, or not measured.</summary>
    /// <param name="parity">The comparison.</param>
    public static Table Table(this ParityCheck parity)
    {
        ArgumentNullException.ThrowIfNull(parity);
        return TableOf.Each(parity.Lines, "Are the halves alike except for the variable?")
            .Text("quantity", line => line.Quantity)
            .Text("half A", line => line.A)
            .Text("half B", line => line.B)
            .Text("finding", Finding)
            .ToTable();
    }

    private static string Finding(ParityLine line) => line.Verdict switch
    {
        SplitBatch.BrewDay.Parity.Same => "the same",
        SplitBatch.BrewDay.Parity.TheVariable => "differs, and follows from what the trial changes",
        SplitBatch.BrewDay.Parity.WithinInstrument =>
            $"{Apart(line, line.Difference!.Value)} apart, within what the instruments can tell ({Apart(line, line.Tolerance!.Value)})",
        SplitBatch.BrewDay.Parity.NotMeasured =>
            line.A is null && line.B is null ? "not measured, so nobody can say" : "cannot be compared",
        _ when line is { Difference: { } difference, Tolerance: { } most } =>
            $"a confound: {Apart(line, difference)} apart, more than the instruments' uncertainty explains ({Apart(line, most)})",
        _ when line.Difference is { } difference =>
            $"a confound unless shown to be none: {Apart(line, difference)} apart, and no uncertainty is logged",
        _ => "a confound: not the same",
    };

    private static string Apart(ParityLine line, double amount) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"{Math.Round(Math.Abs(amount), line.Unit == "SG" ? 4 : 2)}{(line.Unit is "" or "pH" ? "" : " " + line.Unit)}");

    /// <summary>In what the two lots differ besides the variable.</summary>
    /// <param name="confounds">The differences.</param>
    public static Table Table(this IReadOnlyList<HopConfound> confounds)
    {
        ArgumentNullException.ThrowIfNull(confounds);
        return TableOf.Each(confounds, "Do the hop lots differ in more than the variable?")
            .Text("in", confound => confound.Difference.InWords())
            .Text("lot of A", confound => confound.A)
            .Text("lot of B", confound => confound.B)
            .Text("why it matters", confound => confound.Why)
            .Note(confounds.Count == 0 ? "No difference is known." : "Each row is a confound: tasters could be tasting it.")
            .ToTable();
    }

    /// <summary>Each reading of a precision figure, and what follows from it.</summary>
    /// <param name="comparison">The two beers by one analyte.</param>
    public static Table TableOfReadings(this LabComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return TableOf.Each(comparison.Readings,
            $"A difference of {comparison.Analyte.Format(Math.Abs(comparison.Difference))}, however the figure is read")
            .Text("the figure is a", reading => reading.Precision.ToString())
            .Text("critical difference",
                reading => reading.CriticalDifference is { } critical
                    ? (reading.IsUpperBound ? "at most " : "") + comparison.Analyte.Format(critical)
                    : null)
            .Text("the difference is", reading => reading.Judgement switch
            {
                Judgement.Exceeds => "larger",
                Judgement.Within => "not larger",
                _ => "not judged",
            })
            .ToTable();
    }

    /// <summary>Every ballot with what became of it.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public static Table TableOfBallots(this PanelRecord panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return TableOf.Each(panel.Scored.Ballots, $"Ballots of panel {panel.Name}")
            .Text("taster", ballot => ballot.Ballot.Taster)
            .Text("picked", ballot => ballot.Ballot.Answer)
            .Text("order served", ballot => ballot.Set?.Order.Text)
            .Text("result", ballot => !ballot.IsCounted ? "not counted" : ballot.IsCorrect ? "right" : "wrong")
            .Text("remark", ballot => ballot.Reasons.Length > 0 ? ballot.Reasons : null)
            .ToTable();
    }

    /// <summary>Who gets which cups, set by set. It opens the key: keep it from the tasters and the servers.</summary>
    /// <param name="plan">The serving plan.</param>
    public static Table Table(this ServingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return TableOf.Each(plan.Sets, "The serving plan (this opens the key)")
            .Text("taster", set => set.Taster)
            .Number("session", set => set.Session, decimals: 0)
            .Text("server", set => set.Server)
            .Text("cups, in order", set => string.Join("  ", set.Cups.Select(cup => cup.Code)))
            .Text("what is in them", set => set.Order.Text)
            .ToTable();
    }

    /// <summary>Every sentence with a number, with its method and its sources.</summary>
    /// <param name="verdict">The verdict.</param>
    public static Table Table(this Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return TableOf.Each(verdict.Claims, "The claims and where they come from")
            .Text("sentence", claim => claim.Sentence)
            .Text("method", claim => claim.Method)
            .Text("sources", claim => string.Join(", ", claim.Sources))
            .ToTable();
    }

    /// <summary>What limits a verdict, what it does not show, and what to do next.</summary>
    /// <param name="verdict">The verdict.</param>
    public static Table TableOfLimits(this Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var rows = verdict.Limitations.Select(claim => ("limit", claim.Sentence))
            .Concat(verdict.DoesNotShow.Select(claim => ("not shown", claim.Sentence)))
            .Concat(verdict.Next.Select(claim => ("next", claim.Sentence)));
        return TableOf.Each(rows, "Limits, what is not shown, and what to do next")
            .Text("kind", row => row.Item1)
            .Text("sentence", row => row.Sentence)
            .ToTable();
    }
}
