using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Lab;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of a lab difference.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class LabCharts
{
    /// <summary>Every replicate of both beers, their means, and the difference beside the critical difference of the method.</summary>
    /// <param name="comparison">The comparison of the two beers.</param>
    public static Figure Chart(this LabComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (a, b, analyte) = (comparison.A, comparison.B, comparison.Analyte);
        var criticals = comparison.Readings.Select(r => r.CriticalDifference).OfType<double>().Order().ToList();
        List<string> rows = [$"beer {a.Label}, {Words.Counted(a.Count, "replicate")}",
            $"beer {b.Label}, {Words.Counted(b.Count, "replicate")}"];
        List<Mark> marks = [];
        if (comparison.CriticalDifference is { } critical)
        {
            marks.Add(new Zone(a.Mean - critical, a.Mean + critical)
            {
                Ink = Ink.BeerA,
                Name = Invariant($"within {analyte.Format(critical)} of {a.Label}: not told apart"),
            });
        }

        marks.Add(new Dots([.. a.Values.Select(v => new At(v, 0.18))]) { Ink = Ink.Faint });
        marks.Add(new Dots([.. b.Values.Select(v => new At(v, 1.18))]) { Ink = Ink.Faint });
        marks.Add(new Dots([new At(a.Mean, -0.12)]) { Ink = Ink.BeerA, Name = $"mean {analyte.Format(a.Mean)}" });
        marks.Add(new Dots([new At(b.Mean, 0.88)]) { Ink = Ink.BeerB, Name = $"mean {analyte.Format(b.Mean)}" });

        var difference = analyte.Format(Math.Abs(comparison.Difference));
        var limits = criticals switch
        {
            [] => "no precision is known for it",
            [var one] => $"the method tells {analyte.Format(one)} apart",
            _ => $"the method tells from {analyte.Format(criticals[0])} to {analyte.Format(criticals[^1])} apart, depending on what the "
                + $"lab's figure means",
        };
        return new Figure
        {
            Title = comparison.Judgement switch
            {
                Judgement.Exceeds => $"The beers differ in {analyte.Name}, as the lab measures it: {difference}",
                Judgement.Within => $"The lab's method does not tell the beers apart in {analyte.Name}: they differ by {difference}",
                Judgement.DependsOnReading =>
                    $"Whether {difference} of {analyte.Name} is a difference hangs on what the lab's precision means",
                _ => $"The beers differ by {difference} of {analyte.Name}; what the method can tell apart is not known",
            },
            Subtitle = $"{Words.Capital(analyte.Name)} by the lab: each replicate (grey) and the mean",
            Reading = $"Beer {a.Label} has {analyte.Format(a.Mean)} and beer {b.Label} {analyte.Format(b.Mean)}; they differ by "
                + $"{difference}, and {limits}.",
            X = new Axis(analyte.Name, analyte.Unit == analyte.Name ? "" : analyte.Unit),
            Y = Axis.Of(rows),
            Marks = marks,
            Numbers =
                TableOf.Each(a.Values.Select((v, i) => (Beer: a.Label, Replicate: i + 1, Value: v))
                    .Concat(b.Values.Select((v, i) => (Beer: b.Label, Replicate: i + 1, Value: v))),
                    $"{Words.Capital(analyte.Name)} by the lab")
                    .Text("beer", r => r.Beer).Number("replicate", r => r.Replicate, decimals: 0)
                    .Number(analyte.Name, r => r.Value, analyte.Unit == analyte.Name ? "" : analyte.Unit, analyte.Decimals)
                    .Note($"Means {analyte.Format(a.Mean)} and {analyte.Format(b.Mean)}; {limits}.")
                    .ToTable(),
        };
    }
}
