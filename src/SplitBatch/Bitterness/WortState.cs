using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>The wort as a whole, for models that correct the beer's bitterness and not each charge's.</summary>
/// <param name="FinalLiters">Cold wort that the kettle gave, in litres.</param>
/// <param name="BoilLiters">Mean volume during the boil, as at 20 °C, in litres.</param>
/// <param name="AltitudeMeters">Height above the sea, in metres.</param>
public readonly record struct WortState(double FinalLiters, double BoilLiters, double AltitudeMeters)
{
    /// <summary>The state of a kettle's wort.</summary>
    public static WortState Of(Kettle kettle)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        return new(kettle.FinalVolume.Liters, kettle.MeanVolume.Liters, kettle.Altitude.Meters);
    }
}
