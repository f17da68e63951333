using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Counting;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of a reading that starts from a stated prior.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class PosteriorCharts
{
    /// <summary>How likely each share of discriminators is before and after the count.</summary>
    /// <param name="reading">The Bayesian reading.</param>
    public static Figure Chart(this BayesReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var credible = reading.Credible();
        var end = Math.Min(1, Math.Max(credible.High, reading.Margin) + 0.2);
        var after = reading.Density(200).Where(point => point.Discriminators <= end).ToList();
        var prior =
            after.Select(
                point => new At(point.Discriminators,
                    MathNet.Numerics.Distributions.Beta.PDF(reading.PriorA, reading.PriorB, point.Discriminators))).ToList();
        var said = reading is { PriorA: 1, PriorB: 1 }
            ? "before: every share equally likely"
            : Invariant($"before: Beta({Printed.Chosen(reading.PriorA)}, {Printed.Chosen(reading.PriorB)})");
        var top = after.Max(point => point.Density);
        return new Figure
        {
            Title = $"More than {Printed.ChosenPercent(reading.Margin)} can tell the beers apart: "
                + $"{Printed.Percent(reading.ChanceAboveMargin)} likely",
            Subtitle = Invariant($"{reading.Correct} of {reading.Tasters}, {reading.Protocol.Name}; how likely each share of ")
                + Invariant($"discriminators is, before and after the count"),
            Reading = reading.ToString(),
            X = new Axis("share who tell the beers apart") { Percent = true, Min = 0, Max = end },
            Y = new Axis("how likely (density)") { Min = 0, Max = 1.15 * Math.Max(top, 1) },
            Marks =
            [
                new Curve([.. prior.Where(point => point.Y <= 1.1 * Math.Max(top, 1))]) { Ink = Ink.Faint, Name = said },
                new Curve([.. after.Select(point => new At(point.Discriminators, point.Density))]) { Name = "after the count" },
                new Rule(reading.Margin) { Ink = Ink.Limit, Name = $"the margin that matters: {Printed.ChosenPercent(reading.Margin)}" },
            ],
            Numbers = TableOf.Each(Enumerable.Range(0, 10).Select(i => i / 10.0), "Chance that more than so many can tell the beers apart")
                .Percent("more than", share => share)
                .Percent("chance after the count", share => reading.ChanceAbove(share), decimals: 1)
                .ToTable(),
        };
    }
}
