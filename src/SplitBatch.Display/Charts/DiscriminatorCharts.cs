using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Panel.Counting;
using SplitBatch.Display.Tables;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of how many can tell the beers apart.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class DiscriminatorCharts
{
    /// <summary>For each panel the share of people who tell the beers apart, with what its count still allows.</summary>
    /// <param name="panels">The panels by name, in the order to be shown; at least one.</param>
    /// <param name="margin">The share that would matter, declared beforehand; null for none.</param>
    /// <exception cref="ArgumentException">No panel is given.</exception>
    public static Figure Chart(this IEnumerable<(string Name, DifferenceTest Test)> panels, double? margin = null)
    {
        ArgumentNullException.ThrowIfNull(panels);
        var shown = panels.ToList();
        if (shown.Count == 0) throw new ArgumentException("There is no panel to show.", nameof(panels));

        List<Mark> marks = [new Rule(0) { Ink = Ink.Faint, Name = shown.Count > 0 && margin is < 0.12 ? "" : "nobody" }];
        if (margin is { } line) marks.Add(new Rule(line) { Ink = Ink.Limit, Name = $"the margin that matters: {Words.Percent(line)}" });
        marks.Add(new Ranges([.. shown.Select((p, i) => new RangeItem(
            i, p.Test.DiscriminatorsInterval.Low, p.Test.DiscriminatorsInterval.High, p.Test.Discriminators, Said(p.Test)))]));

        var most = shown.Max(p => p.Test.DiscriminatorsInterval.High);
        return new Figure
        {
            Title = shown.Count == 1
                ? $"Between {Words.Percent(shown[0].Test.DiscriminatorsInterval.Low)} and {Words.Percent(most)} of people may tell these beers apart"
                : "How many people tell these beers apart, panel by panel",
            Subtitle = $"Estimated share of discriminators with exact {Words.Percent(shown[0].Test.Level)} intervals",
            Reading = string.Join(" ", shown.Select(p =>
                $"Panel {p.Name}: the count fits best if {Words.Percent(p.Test.Discriminators)} can tell; with {Words.Percent(p.Test.Level)} confidence it is between {Words.Percent(p.Test.DiscriminatorsInterval.Low)} and {Words.Percent(p.Test.DiscriminatorsInterval.High)}."))
                + " An interval with two ends reaches further up than the one-sided limit by which a margin is ruled out.",
            X = new Axis("share who tell the beers apart") { Percent = true, Min = -0.02, Max = Math.Min(1, Math.Max(most, margin ?? 0) + 0.08) },
            Y = Axis.Of([.. shown.Select(p => $"{p.Name} ({p.Test.Count} of {p.Test.Tasters}, {p.Test.Protocol.Name})")]),
            Marks = marks,
            Numbers = TableOf.Each(shown, "Share of discriminators")
                .Text("panel", p => p.Name)
                .Text("protocol", p => p.Test.Protocol.Name)
                .Number("answers", p => p.Test.Tasters, decimals: 0)
                .Number("right", p => p.Test.Count, decimals: 0)
                .Percent("estimate", p => p.Test.Discriminators)
                .Percent("from", p => p.Test.DiscriminatorsInterval.Low)
                .Percent("to", p => p.Test.DiscriminatorsInterval.High)
                .ToTable(),
        };
    }

    /// <summary>The share of people who tell the beers apart by one panel.</summary>
    /// <param name="reading">What the panel's count says.</param>
    /// <param name="name">The panel's name.</param>
    public static Figure Chart(this PanelReading reading, string name = "panel")
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Chart([(name, reading.Difference)], reading.Similarity.Margin);
    }

    private static string Said(DifferenceTest test) =>
        $"{Words.Percent(test.Discriminators)} ({Words.Percent(test.DiscriminatorsInterval.Low)} to {Words.Percent(test.DiscriminatorsInterval.High)})";
}
