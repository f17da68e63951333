using System.Globalization;
using SplitBatch.Bitterness;
using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch.Display.Tables;

/// <summary>The units that a pair of doses is read in: those in which its hops were weighed and its kettle measured.</summary>
/// <param name="Us">Whether masses are read in ounces.</param>
/// <param name="UsVolumes">Whether volumes are read in US gallons and quarts.</param>
internal readonly record struct Measure(bool Us, bool UsVolumes)
{
    public static Measure Of(ChargeMatch match) => new(
        match.A.HopMass.Unit is MassUnit.Ounce or MassUnit.Pound,
        match.A.Estimate.Kettle.Volume.Unit is VolumeUnit.UsGallon or VolumeUnit.UsQuart or VolumeUnit.UsOunce);

    public string Mass => Us ? "oz" : "g";

    public string Wort => UsVolumes ? "gal" : "L";

    public string KeptBack => UsVolumes ? "qt" : "L";

    /// <summary>Decimals of a weighed mass.</summary>
    public int Decimals => Us ? 2 : 1;

    public double Of(Mass mass) => Us ? mass.Ounces : mass.Grams;

    public double WortOf(Volume volume) => UsVolumes ? volume.UsGallons : volume.Liters;

    public double KeptBackOf(Volume volume) => UsVolumes ? volume.UsQuarts : volume.Liters;

    /// <summary>For example <c>55.5 g</c> or <c>1.30 oz</c>.</summary>
    public string Text(Mass mass, int more = 0) => Printed.Fixed(Of(mass), Decimals + more, Mass);
}
