using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>What to dose to, by the published formula, so that the laboratory measures what is wanted: a house-corrected target, labelled as such wherever it is shown.</summary>
/// <param name="Wanted">The bitterness that the laboratory should measure, in IBU.</param>
/// <param name="Estimate">The estimate, by the published formula, to dose to, in IBU.</param>
/// <param name="Interval">Prediction interval for the next batch so dosed, as the laboratory would measure it, in IBU.</param>
/// <param name="Batches">How many of the house's own batches the correction rests on.</param>
public sealed record HouseTarget(double Wanted, double Estimate, Interval Interval, int Batches)
{
    /// <summary>The label: never shown without it.</summary>
    public string Label => HouseEstimate.LabelOf(Batches);

    /// <summary>For example <c>To measure 25.0 IBU, dose to an estimate of 32.9 IBU (corrected for this house, from 4 batches); next batch 15.8 to 39.6 (90 %)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"To measure {Wanted:0.0} IBU, dose to an estimate of {Estimate:0.0} IBU ({Label}); next batch {Interval.Low:0.0} to {Interval.High:0.0} ({Interval.Level * 100:0.#} %)");
}
