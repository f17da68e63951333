using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of several panels side by side.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class ForestCharts
{
    /// <summary>The distance between the beers by each panel on one scale (d-prime), which can be compared between protocols.</summary>
    /// <param name="forest">The panels.</param>
    /// <param name="combined">The combination by a stated method, if one was asked for; null for none.</param>
    public static Figure Chart(this Forest forest, StratifiedCombination? combined = null)
    {
        ArgumentNullException.ThrowIfNull(forest);
        var rows = forest.Rows
            .Select(r => (Name: $"{r.Panel.Name} ({r.Panel.Correct} of {r.Panel.Tasters}, {r.Panel.Protocol.Name})", Best: r.DPrime.Value,
                r.DPrime.Interval)).ToList();
        var panels = rows.Count;
        if (combined is not null) rows.Add(("together, stratified by panel", combined.DPrime, combined.Interval));
        var most = rows.SelectMany(r => new[] { r.Best, r.Interval.High }).Where(double.IsFinite).DefaultIfEmpty(3).Max();
        RangeItem Item(int i) =>
            new(i, rows[i].Interval.Low, rows[i].Interval.High, double.IsFinite(rows[i].Best) ? rows[i].Best : null,
                DPrimeWords(rows[i].Best, rows[i].Interval));
        return new Figure
        {
            Title = panels == 1 ? "How far apart the beers are by this panel" : "How far apart the beers are, panel by panel",
            Subtitle = $"d-prime: the distance in units of the noise of one tasting, {Printed.ChosenPercent(forest.Level)} intervals; "
                + $"about 1 is a small difference",
            Reading = string.Join(" ", forest.Rows.Select(r => r + ".")) + (combined is null ? "" : " " + combined),
            X = new Axis("distance between the beers, d-prime") { Min = -0.03 * Math.Min(8, most * 1.08), Max = Math.Min(8, most * 1.08) },
            Y = Axis.Of([.. rows.Select(r => r.Name)]),
            Marks =
            [
                new Ranges([.. Enumerable.Range(0, panels).Select(Item)]),
                .. combined is null ? Array.Empty<Mark>() : [new Ranges([Item(panels)]) { Ink = Ink.Limit }],
            ],
            Numbers = TableOf.Each(rows, "Distance between the beers by panel")
                .Text("panel", r => r.Name)
                .Number("d-prime", r => r.Best, decimals: 2)
                .Number("from", r => r.Interval.Low, decimals: 2)
                .Number("to", r => r.Interval.High, decimals: 2)
                .Note(combined is null ? "" : $"Together: {StratifiedCombination.Method}.")
                .ToTable(),
        };
    }

    private static string DPrimeWords(double best, Interval interval) =>
        (double.IsFinite(best) ? $"{Printed.DPrime(best)} " : "") + $"({Printed.Range(interval, Printed.DPrime)})";
}
