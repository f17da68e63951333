using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of a tally while ballots come in.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class TallyCharts
{
    /// <summary>Where the count stands and where it can still end, before what guessing gives for the whole panel; for a sequential panel, its course between the declared lines.</summary>
    /// <param name="tally">The tally.</param>
    /// <exception cref="InvalidOperationException">The protocol has no known chance.</exception>
    public static Figure Chart(this LiveTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        if (tally.Course is { } course) return course.Chart() with { Reading = tally.ToString() };
        var (plan, low, high) = (tally.Panel.Plan, tally.Correct, tally.Correct + tally.StillOut);
        var answers = Math.Max(1, tally.Counted + tally.StillOut);
        var critical = Power.CriticalCount(plan.Protocol, answers, plan.Alpha);
        var chances = Enumerable.Range(0, answers + 1).Select(k => (Count: k, Chance: ExactBinomial.Exactly(k, answers, plan.Protocol.Chance))).ToList();
        bool Shows(int count) => count >= critical || (plan.Protocol.Sides == 2 && answers - count >= critical);

        List<Mark> marks = [];
        if (!tally.IsComplete) marks.Add(new Zone(low - 0.5, high + 0.5) { Ink = Ink.BeerA, Name = "where it can still end" });
        marks.Add(new Bars([.. chances.Where(c => !Shows(c.Count)).Select(c => new BarItem(c.Count, c.Chance))]) { Ink = Ink.Faint });
        marks.Add(new Bars([.. chances.Where(c => Shows(c.Count)).Select(c => new BarItem(c.Count, c.Chance))]) { Ink = Ink.Limit });
        if (critical is { } needed) marks.Add(new Rule(needed - 0.5) { Ink = Ink.Limit, Name = Invariant($"{needed} or more show a difference") });
        marks.Add(new Rule(low) { Name = tally.IsComplete ? Invariant($"the count: {low}") : Invariant($"so far: {low}") });

        return new Figure
        {
            Title = tally.IsComplete
                ? Invariant($"All ballots are in: {low} of {answers} right")
                : Invariant($"{low} right of {tally.Counted} so far; {Words.Counted(tally.StillOut, "ballot")} still out"),
            Subtitle = Invariant($"{Words.Capital(plan.Protocol.Name)}, panel {plan.Name}; bars: the chance of each count of {answers} when everybody guesses"),
            Reading = tally.ToString(),
            X = new Axis("right answers at the end") { Whole = true, Min = -0.7, Max = answers + 0.7 },
            Y = new Axis("chance by guessing") { Percent = true, Min = 0 },
            Marks = marks,
            Numbers = TableOf.Each(chances, "Chance of each count by guessing, and whether it can still come out")
                .Number("right answers", c => c.Count, decimals: 0)
                .Percent("chance", c => c.Chance, decimals: 2)
                .Text("shows a difference", c => Shows(c.Count) ? "yes" : "no")
                .Text("can still come out", c => c.Count >= low && c.Count <= high ? "yes" : "no")
                .ToTable(),
        };
    }
}
