using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Simulation;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>Charts of simulated panels.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class SimulationCharts
{
    private static readonly int[] GrowingPanels = [20, 50, 200, 1000, 5000, 20_000];

    /// <summary>How often each count of right answers came up in simulated panels, beside the exact chances where there are any.</summary>
    /// <param name="panels">The panels.</param>
    public static Figure Chart(this SimulatedPanels panels)
    {
        ArgumentNullException.ThrowIfNull(panels);
        var (low, high) = Shown(panels);
        List<Mark> marks = [Frequencies(panels, low, high)];
        if (Exact(panels, low, high) is { } exact) marks.Add(exact);
        return new Figure
        {
            Title = Invariant($"{Printed.Count(panels.Panels)} {(panels.Panels == 1 ? "panel" : "panels")} of {panels.Tasters}: ")
                + Invariant($"{Printed.Expected(panels.Mean)} right on average"),
            Subtitle = Invariant($"{Words.Capital(panels.Protocol.Name)}, ")
                + Invariant($"{panels.Model}{(panels.Replicates > 1 ? Invariant($", {panels.Replicates} sets each") : "")}; bars: the ")
                + Invariant($"share of panels with each count"),
            Reading = Invariant($"Most panels had between {Quantile(panels, 0.1)} and {Quantile(panels, 0.9)} right answers; the ")
                + Invariant($"smallest count was {Least(panels)}, the largest {Most(panels)}.")
                + (marks.Count > 1 ? " The dots are the exact chances, to which the bars come closer the more panels there are." : ""),
            X = new Axis("right answers") { Whole = true, Min = low - 0.7, Max = high + 0.7 },
            Y = new Axis("share of panels") { Percent = true, Min = 0 },
            Marks = marks,
            Numbers = CountsTable(panels, low, high),
        };
    }

    /// <summary>
    /// The same with a slider: a distribution that grows from twenty panels to twenty thousand. The first panels stay when more are added.
    /// </summary>
    /// <param name="protocol">A protocol.</param>
    /// <param name="tasters">People in each panel, in [1, 1000].</param>
    /// <param name="seed">The seed.</param>
    /// <param name="model">What the tasters are like; null for people who cannot tell.</param>
    public static Explorer ExploreManyPanels(this Protocol protocol, int tasters, int seed, SimulatedTasters? model = null)
    {
        var runs = GrowingPanels.Select(panels => Simulate.Panels(protocol, tasters, panels, seed, model)).ToList();
        var (low, high) = Shown(runs[^1]);
        List<Layer> layers = [.. runs.Select((run, i) => new Layer(Frequencies(run, low, high), i))];
        if (Exact(runs[^1], low, high) is { } exact) layers.Add(new Layer(exact, default(int?)));
        var most = runs.SelectMany(run => Enumerable.Range(low, high - low + 1).Select(run.Exactly)).Max();
        var start = Chart(runs[0]);
        return new Explorer(
            start with { X = start.X with { Min = low - 0.7, Max = high + 0.7 }, Y = start.Y with { Max = most * 1.1 },
                Numbers = CountsTable(runs[^1], low, high) },
            [new Slider("panels", [.. GrowingPanels.Select(n => Invariant($"{Printed.Count(n)}"))], 0)],
            layers)
        {
            Title = Invariant($"More panels of {tasters}: the bars settle on the dots"),
            Subtitle = start.Subtitle,
        };
    }

    private static Bars Frequencies(SimulatedPanels panels, int low, int high) =>
        new([.. Enumerable.Range(low, high - low + 1).Select(k => new BarItem(k, panels.Exactly(k)))]) { Ink = Ink.Faint };

    private static Dots? Exact(SimulatedPanels panels, int low, int high) => panels.ExactChances is { } chances
        ? new Dots([.. Enumerable.Range(low, high - low + 1).Select(k => new At(k, chances[k]))]) { Ink = Ink.Limit }
        : null;

    private static Table CountsTable(SimulatedPanels panels, int low, int high)
    {
        var table =
            TableOf.Each(Enumerable.Range(low, high - low + 1),
                Invariant($"How often each count came up in {Printed.Count(panels.Panels)} panels"))
                .Number("right answers", k => k, decimals: 0)
                .Number("panels", k => panels.Counts[k], decimals: 0)
                .Percent("share", k => panels.Exactly(k), decimals: 2)
                .Percent("so many or more", k => panels.AtLeast(k), decimals: 2);
        return (panels.ExactChances is { } chances ? table.Percent("exact chance", k => chances[k], decimals: 2) : table).ToTable();
    }

    private static (int Low, int High) Shown(SimulatedPanels panels) =>
        (Math.Max(0, Least(panels) - 1), Math.Min(panels.Counts.Count - 1, Most(panels) + 1));

    private static int Least(SimulatedPanels panels) => Enumerable.Range(0, panels.Counts.Count).First(k => panels.Counts[k] > 0);

    private static int Most(SimulatedPanels panels) => Enumerable.Range(0, panels.Counts.Count).Last(k => panels.Counts[k] > 0);

    private static int Quantile(SimulatedPanels panels, double share) =>
        Enumerable.Range(0, panels.Counts.Count).First(k => 1 - panels.AtLeast(k + 1) >= share);
}
