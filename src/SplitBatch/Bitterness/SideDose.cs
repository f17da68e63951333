using System.Collections.Immutable;
using System.Globalization;
using SplitBatch.Brewing;
using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch.Bitterness;

/// <summary>What one half gets: its charges as they will be weighed, and what follows from them.</summary>
public sealed record SideDose
{
    internal SideDose(Side side, Dose dose)
    {
        Side = side;
        Dose = dose;
        Estimate = dose.Estimate();
    }

    /// <summary>Which half.</summary>
    public Side Side { get; }

    /// <summary>The charges, rounded to the scale.</summary>
    public ImmutableArray<HopCharge> Charges => Dose.Charges;

    /// <summary>The estimate for the charges as weighed.</summary>
    public BitternessEstimate Estimate { get; }

    /// <summary>Bitterness of the half, as estimated.</summary>
    public BitternessUnits Bitterness => Estimate.Value;

    /// <summary>All hops of the half.</summary>
    public Mass HopMass => Sum(charge => charge.Mass.Grams);

    /// <summary>All alpha acid of the half (iso-alpha acid, for isomerised forms).</summary>
    public Mass AlphaMass => Sum(charge => charge.AlphaMass.Grams);

    /// <summary>Leaf and strig: hop mass less alpha acid, and less beta acid where it is known; none from extracts and oils.</summary>
    public Mass PlantMatter => Sum(charge => charge.Mass.Grams * charge.Lot.PlantShare(Dose.Forms));

    /// <summary>Wort that the hops of the kettle keep back.</summary>
    public Volume WortHeld => Dose.WortHeld;

    /// <summary>Wort that reaches the fermenter.</summary>
    public Volume IntoFermenter => Dose.IntoFermenter;

    /// <summary>Price of the hops, or null if a lot has no price.</summary>
    public decimal? Cost => Charges.All(charge => charge.Lot.PricePerKilogram is not null)
        ? Charges.Sum(charge => charge.Lot.PricePerKilogram!.Value * (decimal)charge.Mass.Kilograms)
        : null;

    /// <summary>The arithmetic behind it.</summary>
    internal Dose Dose { get; }

    /// <summary>For example <c>A: 58.0 g cones, 60 min in the boil; 3.01 g alpha acid, 32.1 IBU by Tinseth</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Side}: {string.Join(", ", Charges)}; {AlphaText} alpha acid, {Bitterness} by {Estimate.Model.Name}");

    private string AlphaText => Printed.AlphaMass(AlphaMass, Spoken.IsUs(AlphaMass) ? UnitSystem.Us : UnitSystem.Metric);

    /// <summary>A sum over charges, in the unit that the first was weighed in.</summary>
    private Mass Sum(Func<HopCharge, double> grams) => Mass.FromGrams(Charges.Sum(grams)).ToUnit(Charges[0].Mass.Unit);
}
