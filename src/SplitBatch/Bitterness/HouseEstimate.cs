using System.Globalization;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness;

/// <summary>An estimate corrected for the house, and labelled as such wherever it is shown.</summary>
/// <param name="Published">The estimate before correction, in IBU.</param>
/// <param name="Corrected">The estimate after correction, in IBU: the middle of what is predicted.</param>
/// <param name="Interval">Prediction interval for the next batch as the laboratory would measure it, in IBU.</param>
/// <param name="Batches">How many of the house's own batches the correction rests on.</param>
public sealed record HouseEstimate(double Published, double Corrected, Interval Interval, int Batches)
{
    /// <summary>The label: never shown without it.</summary>
    public string Label => LabelOf(Batches);

    /// <summary>
    /// For example <c>22.1 IBU (corrected for this house, from 4 batches; 32.0 by the formula), next batch 14.0 to 34.9 (90 %)</c>.
    /// </summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Printed.Bitterness(Corrected)} IBU ({Label}; {Printed.Bitterness(Published)} by the formula), next batch "
            + $"{Printed.Range(Interval, ibu => Printed.Bitterness(ibu))} ({Printed.ChosenPercent(Interval.Level)})");

    internal static string LabelOf(int batches) => batches == 0
        ? "not corrected: no batches of this house yet"
        : string.Create(CultureInfo.InvariantCulture, $"corrected for this house, from {batches} {(batches == 1 ? "batch" : "batches")}");
}

/// <summary>
/// What to dose to, by the published formula, so that the laboratory measures what is wanted: a house-corrected target, labelled as such
/// wherever it is shown.
/// </summary>
/// <param name="Wanted">The bitterness that the laboratory should measure, in IBU.</param>
/// <param name="Estimate">The estimate, by the published formula, to dose to, in IBU.</param>
/// <param name="Interval">Prediction interval for the next batch so dosed, as the laboratory would measure it, in IBU.</param>
/// <param name="Batches">How many of the house's own batches the correction rests on.</param>
public sealed record HouseTarget(double Wanted, double Estimate, Interval Interval, int Batches)
{
    /// <summary>The label: never shown without it.</summary>
    public string Label => HouseEstimate.LabelOf(Batches);

    /// <summary>
    /// For example <c>To measure 25.0 IBU, dose to an estimate of 32.9 IBU (corrected for this house, from 4 batches); next batch 15.8 to
    /// 39.6 (90 %)</c>.
    /// </summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"To measure {Printed.Bitterness(Wanted)} IBU, dose to an estimate of {Printed.Bitterness(Estimate)} IBU ({Label}); next batch "
            + $"{Printed.Range(Interval, ibu => Printed.Bitterness(ibu))} ({Printed.ChosenPercent(Interval.Level)})");
}
