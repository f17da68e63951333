using System.ComponentModel;
using SplitBatch.Bitterness;
using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of what the formulas say of two doses, and how sure that is.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class DoseTables
{
    /// <summary>Both beers' bitterness by several models.</summary>
    /// <param name="a">The models on half A.</param>
    /// <param name="b">The same models on half B.</param>
    public static Table Table(this ModelComparison a, ModelComparison b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return TableOf.Each(a.Rows.Zip(b.Rows, (x, y) => (A: x, B: y)), "Estimated bitterness by published models")
            .Text("model", r => r.A.Model)
            .Number("A", r => r.A.Bitterness, "IBU")
            .Number("B", r => r.B.Bitterness, "IBU")
            .Number("B minus A", r => r.B.Bitterness - r.A.Bitterness, "IBU")
            .Text("in its range", r => r.A.InRange && r.B.InRange ? "yes" : "no")
            .Text("why it differs", r => r.A.Why)
            .Text("published", r => r.A.Citation)
            .ToTable();
    }

    /// <summary>The sources of error of two doses, the largest in the difference first.</summary>
    /// <param name="uncertainty">The uncertainty of the two doses.</param>
    public static Table TableOfSources(this DoseUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(uncertainty);
        return TableOf.Each(uncertainty.Contributions, "Where the doubt about the difference comes from")
            .Text("source", c => c.Term.Name)
            .Text("both beers", c => c.Term.Sharing == Sharing.Shared ? "shared" : "each its own")
            .Number("to A", c => c.ToA, "IBU", decimals: 2)
            .Number("to B", c => c.ToB, "IBU", decimals: 2)
            .Number("to the difference", c => c.ToDifference, "IBU", decimals: 2)
            .Percent("share of its variance", c => c.Share, decimals: 1)
            .Text("figure from", c => c.Term.Source)
            .Text("what would make it smaller", c => c.Term.Remedy)
            .ToTable();
    }

    /// <summary>How sure two doses are.</summary>
    /// <param name="uncertainty">The uncertainty of the two doses.</param>
    public static Table Table(this DoseUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(uncertainty);
        return TableOf.Each<(string What, double Mean, Interval Interval, double Deviation)>(
            [
                ("beer A", uncertainty.Mean.A, uncertainty.A, uncertainty.Deviation.A),
                ("beer B", uncertainty.Mean.B, uncertainty.B, uncertainty.Deviation.B),
                ("B minus A", uncertainty.Mean.Difference, uncertainty.Difference, uncertainty.Deviation.Difference),
            ],
            Invariant($"How sure the two doses are ({Printed.ChosenPercent(uncertainty.A.Level)} intervals, ")
                + Invariant($"{Printed.Count(uncertainty.Draws)} draws, seed {uncertainty.Seed})"))
            .Text("bitterness of", r => r.What)
            .Number("mean", r => r.Mean, "IBU")
            .Number("from", r => r.Interval.Low, "IBU")
            .Number("to", r => r.Interval.High, "IBU")
            .Number("standard deviation", r => r.Deviation, "IBU")
            .ToTable();
    }

    /// <summary>Each past beer: published estimate, lab value, and what the house's factor would have said without it.</summary>
    /// <param name="calibration">The calibration.</param>
    public static Table Table(this HouseCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return TableOf.Each(calibration.Points, "Past beers: estimated and measured")
            .Text("batch", point => point.Pair.Batch)
            .Number("estimated, as published", point => point.Pair.Estimated, "IBU")
            .Number("measured", point => point.Pair.Measured, "BU")
            .Number("measured over estimated", point => point.Pair.Ratio, decimals: 2)
            .Number("corrected for the house", point => point.Fitted, "IBU")
            .Number("corrected without this batch", point => point.LeftOut, "IBU")
            .Note("The last column is the fair test of the correction: it has not seen the beer that it predicts.")
            .ToTable();
    }
}
