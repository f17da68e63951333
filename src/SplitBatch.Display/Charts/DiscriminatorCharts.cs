using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of how many can tell the beers apart.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class DiscriminatorCharts
{
    /// <summary>For each panel the share of tasters who tell the beers apart in its task, with what its count still allows.</summary>
    /// <param name="panels">The panels by name, in the order to be shown; at least one.</param>
    /// <exception cref="ArgumentException">No panel is given.</exception>
    public static Figure Chart(this IEnumerable<(string Name, PanelReading Reading)> panels)
    {
        ArgumentNullException.ThrowIfNull(panels);
        var shown = panels.Select(p => (p.Name, Test: p.Reading.Difference, p.Reading.Similarity, Limits: p.Reading.Limits)).ToList();
        if (shown.Count == 0) throw new ArgumentException("There is no panel to show.", nameof(panels));
        var margins = shown.Select(p => p.Similarity.Margin).Distinct().ToList();

        List<Mark> marks = [new Rule(0) { Ink = Ink.Faint, Name = margins.Min() < 0.12 ? "" : "nobody" }];
        marks.AddRange(
            margins.Select(
                margin => new Rule(margin) { Ink = Ink.Limit, Name = $"the margin that matters: {Printed.ChosenPercent(margin)}" }));
        marks.Add(
            new Ranges(
                [.. shown.Select(
                    (p, i) => new RangeItem(i, p.Limits.Low, p.Limits.High, p.Test.Discriminators,
                        Said(p.Test.Discriminators, p.Limits)))]));

        var most = shown.Max(p => p.Limits.High);
        return new Figure
        {
            Title = shown.Count == 1
                ? $"Up to {Printed.Percent(most)} of such tasters may tell these beers apart in this task"
                : "How many tasters tell these beers apart in each task, panel by panel",
            Subtitle = $"Estimated share of tasters who can tell; the upper end is the limit at "
                + $"{Printed.ChosenPercent(1 - shown[0].Similarity.Beta)} confidence by which a margin is ruled out, the lower end that "
                + $"at the same confidence",
            Reading = string.Join(" ", shown.Select(p =>
                $"Panel {p.Name}: the count fits best if {Printed.Percent(p.Test.Discriminators)} can tell, and allows from "
                    + $"{Printed.Percent(p.Limits.Low)} to {Printed.Percent(p.Limits.High)}, each end with "
                    + $"{Printed.ChosenPercent(1 - p.Similarity.Beta)} confidence.")),
            X = new Axis("share who tell the beers apart in the task")
            {
                Percent = true,
                Min = -0.02,
                Max = Math.Min(1, Math.Max(most, margins.Max()) + 0.08),
            },
            Y = Axis.Of([.. shown.Select(p => $"{p.Name} ({p.Test.Count} of {p.Test.Tasters}, {p.Test.Protocol.Name})")]),
            Marks = marks,
            Numbers = TableOf.Each(shown, "Share of tasters who can tell")
                .Text("panel", p => p.Name)
                .Text("protocol", p => p.Test.Protocol.Name)
                .Number("answers", p => p.Test.Tasters, decimals: 0)
                .Number("right", p => p.Test.Count, decimals: 0)
                .Percent("estimate", p => p.Test.Discriminators)
                .Percent("at least", p => p.Limits.Low)
                .Percent("at most", p => p.Limits.High)
                .Percent("confidence of each end", p => 1 - p.Similarity.Beta)
                .ToTable(),
        };
    }

    /// <summary>The share of tasters who tell the beers apart by one panel.</summary>
    /// <param name="reading">What the panel's count says.</param>
    /// <param name="name">The panel's name.</param>
    public static Figure Chart(this PanelReading reading, string name = "panel")
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Chart([(name, reading)]);
    }

    private static string Said(double estimate, Interval limits) =>
        $"{Printed.Percent(estimate)} ({Printed.Range(limits, share => Printed.Percent(share))})";
}
