using System.ComponentModel;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Simulation;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of what panels counted.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class PanelTables
{
    /// <summary>What a panel declared before it was served.</summary>
    /// <param name="plans">The plans.</param>
    public static Table Table(this IEnumerable<PanelPlan> plans) => TableOf.Each(plans, "What was declared before pouring")
        .Text("panel", p => p.Name)
        .Text("protocol", p => p.Protocol.Name)
        .Number("tasters", p => p.Tasters, decimals: 0)
        .Number("sets each", p => p.Replicates, decimals: 0)
        .Percent("alpha", p => p.Alpha)
        .Percent("margin", p => p.Margin)
        .Percent("beta", p => p.Beta)
        .Number("right that show a difference", p => p.Stopping == StoppingRule.Fixed ? p.CriticalCount : null, decimals: 0)
        .Number("right that rule the margin out",
            p => p.Stopping == StoppingRule.Fixed && p.SimilarityCount is >= 0 and var count ? count : null, decimals: 0)
        .Text("stops", p => p.Stopping == StoppingRule.Sequential ? "by the sequential lines" : "when all are served")
        .ToTable();

    /// <summary>What panels counted and what follows.</summary>
    /// <param name="readings">The panels by name.</param>
    public static Table Table(this IEnumerable<(string Name, PanelReading Reading)> readings) => TableOf.Each(readings, "What was counted")
        .Text("panel", r => r.Name)
        .Text("protocol", r => r.Reading.Difference.Protocol.Name)
        .Number("answers", r => r.Reading.Difference.Tasters, decimals: 0)
        .Number("right", r => r.Reading.Difference.Count, decimals: 0)
        .Number("needed to show a difference", r => r.Reading.Difference.CriticalCount, decimals: 0)
        .Number("p-value", r => r.Reading.Difference.PValue, decimals: 4)
        .Percent("tell apart in the task", r => r.Reading.Difference.Discriminators)
        .Percent("at least", r => r.Reading.Limits.Low)
        .Percent("at most", r => r.Reading.Limits.High)
        .Percent("confidence of each end", r => 1 - r.Reading.Similarity.Beta)
        .ToTable();

    /// <summary>What one panel counted and what follows.</summary>
    /// <param name="reading">The panel's reading.</param>
    /// <param name="name">The panel's name.</param>
    public static Table Table(this PanelReading reading, string name = "panel") => Table([(name, reading)]);

    /// <summary>
    /// The three exact or near-exact intervals of the share of right answers, and what each means for the share who can tell.
    /// </summary>
    /// <param name="test">The test of the count.</param>
    public static Table Table(this DifferenceTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        (string Name, Interval Interval)[] rows = [("Clopper-Pearson (exact)", test.ClopperPearson), ("Wilson (score)", test.Wilson),
            ("Jeffreys", test.Jeffreys)];
        return TableOf.Each(rows, Invariant($"Intervals for {test.Count} of {test.Tasters}"))
            .Text("method", r => r.Name)
            .Percent("right from", r => r.Interval.Low, decimals: 1)
            .Percent("right to", r => r.Interval.High, decimals: 1)
            .Percent("tell apart from", r => test.Protocol.Discriminators(r.Interval.Low), decimals: 1)
            .Percent("tell apart to", r => test.Protocol.Discriminators(r.Interval.High), decimals: 1)
            .Note(test.Repeats is null ? "" : "With repeats these intervals are too narrow: they hold only if all tasters are alike.")
            .ToTable();
    }

    /// <summary>Each taster's count by code, so that nobody is shown up by name.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public static Table TableOfTasters(this PanelRecord panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var scored = panel.Scored;
        var note = !panel.Plan.Protocol.HasKnownChance ? ""
            : scored.PerTaster.All(taster => taster.Counted <= 1)
                ? Invariant(
                    $"One set says nothing about one person: a guesser is right in {Printed.Percent(panel.Plan.Protocol.Chance)} of sets.")
                : Invariant($"A guesser is right in {Printed.Percent(panel.Plan.Protocol.Chance)} of sets on average; a few sets say ")
                    + Invariant($"little about one person.");
        return TableOf.Each(scored.PerTaster, $"Tasters of panel {panel.Name}, by code")
            .Text("taster", t => t.Taster)
            .Number("sets served", t => t.Served, decimals: 0)
            .Number("counted", t => t.Counted, decimals: 0)
            .Number(panel.Plan.Protocol.Sides == 2 ? "named the expected half" : "right", t => t.Correct, decimals: 0)
            .Note(note)
            .ToTable();
    }

    /// <summary>How many tasters were right so many times, beside guessing and the fitted spread of abilities.</summary>
    /// <param name="repeats">The repeats.</param>
    public static Table Table(this ReplicatedTest repeats)
    {
        ArgumentNullException.ThrowIfNull(repeats);
        return TableOf.Each(repeats.Spread, "Tasters by their number of right answers")
            .Number("right answers", r => r.Correct, decimals: 0)
            .Number("tasters", r => r.Observed, decimals: 0)
            .Number("expected if all guess", r => r.ByGuessing)
            .Number("expected by the fitted spread", r => r.Fitted)
            .Note(repeats.Warning ?? "")
            .ToTable();
    }

    /// <summary>
    /// Where practice departed from the plan, and what that does to the conclusion; which ballots were doubtful, and how they were
    /// counted.
    /// </summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public static Table TableOfDepartures(this PanelRecord panel) =>
        Departures([panel ?? throw new ArgumentNullException(nameof(panel))], $"Panel {panel.Name}: plan and practice");

    /// <summary>The same of every counted panel of a trial.</summary>
    /// <param name="trial">The trial.</param>
    /// <exception cref="TrialIncompleteException">No panel is counted yet.</exception>
    public static Table TableOfDepartures(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return Departures(trial.CountedPanels, "Plan and practice");
    }

    private static Table Departures(IReadOnlyList<PanelRecord> panels, string caption)
    {
        var rows = panels.SelectMany(panel => panel.Departures.Select(d => new[] { panel.Name, d.What, d.Planned, d.Done, d.Meaning })
            .Concat(panel.Remarks.Select(remark => new[] { panel.Name, "ballots and count", "", "", remark }))).ToList();
        return TableOf.Each(rows, caption)
            .Text("panel", r => r[0])
            .Text("point", r => r[1])
            .Text("planned", r => r[2])
            .Text("done", r => r[3])
            .Text("what it means", r => r[4])
            .Note(rows.Count == 0 ? "All was served and counted as declared." : "What is not listed was served and counted as declared.")
            .ToTable();
    }

    /// <summary>How often simulated panels give each answer, one row for each kind of tasters.</summary>
    /// <param name="rehearsals">The rehearsals.</param>
    public static Table Table(this IEnumerable<Rehearsal> rehearsals) =>
        TableOf.Each(rehearsals, "How often the plan would give each answer, if")
            .Text("tasters", r => r.Simulated.Model.ToString())
            .Percent("shows a difference", r => r.ShowingADifference)
            .Percent("of these: but a small one", r => r.Shares[PanelAnswer.DifferenceWithinMargin])
            .Percent("rules the margin out", r => r.Shares[PanelAnswer.MarginRuledOut])
            .Percent("settles nothing", r => r.Shares[PanelAnswer.Inconclusive])
            .ToTable();
}
