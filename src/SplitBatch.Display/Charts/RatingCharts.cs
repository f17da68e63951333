using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of rated attributes.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class RatingCharts
{
    /// <summary>Mean ratings of both beers, attribute by attribute, with the difference and its interval.</summary>
    /// <param name="comparisons">The comparisons of one group of tasters, in the order to be shown; at least one.</param>
    /// <param name="scale">What the scale is, such as <c>0 none to 10 very strong</c>.</param>
    /// <exception cref="ArgumentException">There is no comparison, or they are of different groups.</exception>
    public static Figure Chart(this IEnumerable<RatingComparison> comparisons, string scale = "")
    {
        ArgumentNullException.ThrowIfNull(comparisons);
        var rows = comparisons.ToList();
        if (rows.Count == 0) throw new ArgumentException("There is no rating to show.", nameof(comparisons));
        if (rows.Select(r => r.Group).Distinct().Count() > 1)
            throw new ArgumentException("All tasters and those who answered right are two groups; give the comparisons of one.",
                nameof(comparisons));

        var shown = rows.Where(r => r.AdjustedPValue <= 0.05).ToList();
        var who = rows[0].Group == RatingGroup.All ? "all tasters" : "tasters who answered right, some by guessing";
        return new Figure
        {
            Title = shown.Count == 0
                ? "No attribute is shown to differ between the beers; that does not mean they are alike"
                : $"The ratings differ in {Words.Listed([.. shown.Select(r => r.Attribute)])}",
            Subtitle = Invariant($"Mean ratings by {who} ({rows.Max(r => r.Tasters)}); at the right B minus A with its 95 % ")
                + Invariant($"interval{(scale.Length > 0 ? "; " + scale : "")}"),
            Reading =
                string.Join(" ",
                    rows.Select(r => Invariant($"{Words.Capital(r.Attribute)}: A {Printed.Rating(r.MeanA)}, B {Printed.Rating(r.MeanB)}; ")
                        + Invariant($"{Said(r)}."))),
            X = new Axis("mean rating"),
            Y = Axis.Of([.. rows.Select(r => r.Attribute)]),
            Marks =
            [
                new Ranges(
                    [.. rows.Select((r, i) => new RangeItem(i, Math.Min(r.MeanA, r.MeanB), Math.Max(r.MeanA, r.MeanB), null, Said(r)))])
                    {
                        Ink = Ink.Faint,
                    },
                new Dots([.. rows.Select((r, i) => new At(r.MeanA, i - 0.1)).Reverse()]) { Ink = Ink.BeerA, Name = "A" },
                new Dots([.. rows.Select((r, i) => new At(r.MeanB, i + 0.1)).Reverse()]) { Ink = Ink.BeerB, Name = "B" },
            ],
            Numbers = rows.Table(),
        };
    }

    private static string Said(RatingComparison row) => row.DifferenceInterval is { } interval
        ? Invariant($"{Signed(row.Difference)} ({Signed(interval.Low)} to {Signed(interval.High)})")
        : Signed(row.Difference);

    private static string Signed(double value) => (value > 0.05 ? "+" : "") + Printed.Fixed(value, 1);
}
