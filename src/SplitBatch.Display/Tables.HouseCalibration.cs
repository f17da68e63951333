using SplitBatch.Bitterness;

namespace SplitBatch.Display;

/// <content>What past returns say about the house's estimates.</content>
public static partial class Tables
{
    /// <summary>Each past beer: published estimate, lab value, and what the house's factor would have said without it.</summary>
    /// <param name="calibration">The calibration.</param>
    public static Table HouseCalibration(HouseCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return Table.Of(calibration.Points, "Past beers: estimated and measured")
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
