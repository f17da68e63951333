using System.ComponentModel;
using SplitBatch.Bitterness;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Lab;
using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>Charts of what the formulas say of two doses, and how sure that is.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class EstimateCharts
{
    /// <summary>Both beers' bitterness by every published model of the library.</summary>
    /// <param name="match">The two doses.</param>
    public static Figure ChartOfModels(this ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        return Chart(
            ModelComparison.Of(match.A.Estimate.Kettle, match.A.Charges, forms: match.A.Estimate.Forms),
            ModelComparison.Of(match.B.Estimate.Kettle, match.B.Charges, forms: match.B.Estimate.Forms),
            match.Target);
    }

    /// <summary>Both beers' bitterness by several models.</summary>
    /// <param name="a">The models on half A.</param>
    /// <param name="b">The same models on half B.</param>
    /// <param name="target">What was aimed at; null for none.</param>
    /// <exception cref="ArgumentException">The halves were seen by different models.</exception>
    public static Figure Chart(this ModelComparison a, ModelComparison b, BitternessUnits? target = null)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var models = a.Rows.Select(r => r.Model).ToList();
        if (!models.SequenceEqual(b.Rows.Select(r => r.Model)))
            throw new ArgumentException("Both halves must be seen by the same models.", nameof(b));
        var rows = a.Rows.Zip(b.Rows, (x, y) => (A: x, B: y)).ToList();
        List<Mark> marks = [];
        if (target is { } aim) marks.Add(new Rule(aim.Value) { Name = Invariant($"target: {Printed.Chosen(aim.Value)} IBU") });
        marks.Add(new Dots([.. rows.Select((r, i) => new At(r.A.Bitterness, i - 0.17)).Reverse()]) { Ink = Ink.BeerA, Name = "beer A" });
        marks.Add(new Dots([.. rows.Select((r, i) => new At(r.B.Bitterness, i + 0.17)).Reverse()]) { Ink = Ink.BeerB, Name = "beer B" });
        var (low, high) = (Math.Min(a.Lowest, b.Lowest), Math.Max(a.Highest, b.Highest));
        return new Figure
        {
            Title = Invariant($"Published models put the same beers anywhere from {Printed.Fixed(low, 0)} to ")
                + Invariant($"{Printed.Fixed(high, 0)} IBU"),
            Subtitle = "Estimated bitterness of either half, model by model; what matters for a fair split is that A and B agree",
            Reading =
                string.Join(" ",
                    rows.Select(r => Invariant($"{r.A.Model}: A {Printed.Bitterness(r.A.Bitterness)}, B ")
                        + Invariant($"{Printed.Bitterness(r.B.Bitterness)} ")
                        + Invariant($"IBU{(r.A.InRange && r.B.InRange ? "" : " (outside the model's range)")}."))),
            X = new Axis("estimated bitterness", "IBU")
            {
                Min = Math.Max(0, low - 0.15 * (high - low) - 1),
                Max = high + 0.15 * (high - low) + 1,
            },
            Y = Axis.Of([.. rows.Select(r => r.A.InRange && r.B.InRange ? r.A.Model : r.A.Model + " (outside its range)")]),
            Marks = marks,
            Numbers = a.Table(b),
        };
    }

    /// <summary>The sources of error in the difference of two doses, the largest on top.</summary>
    /// <param name="uncertainty">The uncertainty of the two doses.</param>
    /// <param name="most">How many sources to show at most; the rest is one bar.</param>
    public static Figure Chart(this DoseUncertainty uncertainty, int most = 8)
    {
        ArgumentNullException.ThrowIfNull(uncertainty);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var bars = uncertainty.Contributions.Where(c => c.Share >= 0.0005).Take(most).Select(c => (c.Term.Name, c.Share)).ToList();
        var rest = uncertainty.Contributions.Skip(bars.Count).Sum(c => c.Share);
        if (rest >= 0.0005) bars.Add(("all others", rest));
        if (bars.Count == 0) bars.Add(("no source of error", 0));
        return new Figure
        {
            Title = bars[0].Share > 0 ? $"Largest doubt about the difference: {bars[0].Name} ({Printed.Percent(bars[0].Share)})"
                : "No source of error is left in the difference",
            Subtitle = Invariant($"Share of the variance of B minus A, which lies between {Printed.Fixed(uncertainty.Difference.Low, 1)} ")
                + Invariant($"and {Printed.Fixed(uncertainty.Difference.High, 1)} IBU ")
                + Invariant($"({Printed.ChosenPercent(uncertainty.Difference.Level)})"),
            Reading = uncertainty.Advice + " In shares: "
                + string.Join(", ", bars.Select(b => $"{b.Name} {Printed.Percent(b.Share)}")) + ".",
            X = new Axis("share of the variance of the difference")
            {
                Percent = true,
                Min = 0,
                Max = Math.Min(1, bars.Max(b => b.Share) * 1.08 + 0.01),
            },
            Y = Axis.Of([.. bars.Select(b => b.Name)]),
            Marks =
            [
                new Bars([new BarItem(0, bars[0].Share, Printed.Percent(bars[0].Share))], Along.X),
                new Bars([.. bars.Skip(1).Select((b, i) => new BarItem(i + 1, b.Share, Printed.Percent(b.Share)))], Along.X)
                {
                    Ink = Ink.Faint,
                },
            ],
            Numbers = uncertainty.TableOfSources(),
        };
    }

    /// <summary>What was estimated for each beer beside what the lab measured.</summary>
    /// <param name="doses">The doses as weighed.</param>
    /// <param name="lab">The lab's bitterness of both beers.</param>
    /// <param name="uncertainty">How sure the estimates are; null to show them without intervals.</param>
    public static Figure ChartAgainst(this ChargeMatch doses, LabComparison lab, DoseUncertainty? uncertainty = null)
    {
        ArgumentNullException.ThrowIfNull(doses);
        ArgumentNullException.ThrowIfNull(lab);
        var (a, b) = (doses.A.Bitterness.Value, doses.B.Bitterness.Value);
        Interval? ia = uncertainty?.A, ib = uncertainty?.B;
        var (unit, model) = (lab.Analyte.Unit, doses.A.Estimate.Model.Name);
        return new Figure
        {
            Title = Invariant($"Estimated {Printed.Bitterness(a)} and {Printed.Bitterness(b)} IBU, measured ")
                + Invariant($"{Printed.Bitterness(lab.A.Mean)} and {Printed.Bitterness(lab.B.Mean)} {unit}"),
            Subtitle = ia is { } known
                ? $"Estimates by {model}'s formula with {Printed.ChosenPercent(known.Level)} intervals; the lab's means with the range of "
                    + $"their replicates"
                : $"Estimates by {model}'s formula; the lab's means with the range of their replicates",
            Reading = Invariant($"Beer A: estimated {Spoken(a, ia)}, measured {Printed.Bitterness(lab.A.Mean)} {unit}. Beer B: estimated ")
                + Invariant($"{Spoken(b, ib)}, measured {Printed.Bitterness(lab.B.Mean)} {unit}."),
            X = new Axis("bitterness", unit == "BU" ? "IBU, BU" : "IBU"),
            Y = Axis.Of(["beer A, estimated", "beer A, lab", "beer B, estimated", "beer B, lab"]),
            Marks =
            [
                new Ranges([new RangeItem(0, ia?.Low ?? a, ia?.High ?? a, a, Spoken(a, ia))]) { Ink = Ink.BeerA },
                new Ranges([new RangeItem(1, lab.A.Values.Min(), lab.A.Values.Max(), lab.A.Mean, lab.Analyte.Format(lab.A.Mean))]),
                new Ranges([new RangeItem(2, ib?.Low ?? b, ib?.High ?? b, b, Spoken(b, ib))]) { Ink = Ink.BeerB },
                new Ranges([new RangeItem(3, lab.B.Values.Min(), lab.B.Values.Max(), lab.B.Mean, lab.Analyte.Format(lab.B.Mean))]),
            ],
            Numbers =
                TableOf.Each<(string Beer, double Estimate, Interval? Interval, Replicates Lab)>(
                    [("A", a, ia, lab.A), ("B", b, ib, lab.B)], "Estimated and measured bitterness")
                    .Text("beer", r => r.Beer)
                    .Number("estimate", r => r.Estimate, "IBU")
                    .Number("from", r => r.Interval?.Low, "IBU")
                    .Number("to", r => r.Interval?.High, "IBU")
                    .Number("lab mean", r => r.Lab.Mean, unit)
                    .Number("replicates", r => r.Lab.Count, decimals: 0)
                    .Number("lab over estimate", r => r.Estimate > 0 ? r.Lab.Mean / r.Estimate : null, decimals: 2)
                    .Note("A formula's IBU and a lab's BU share a scale, not a method.")
                    .ToTable(),
        };
    }

    private static string Spoken(double value, Interval? interval) => interval is { } i
        ? Invariant($"{Printed.Bitterness(value)} IBU ({Printed.Range(i, x => Printed.Bitterness(x))})")
        : Invariant($"{Printed.Bitterness(value)} IBU");
}
