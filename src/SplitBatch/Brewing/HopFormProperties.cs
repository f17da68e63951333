using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>What a hop form does in kettle and beer, with where each figure comes from.</summary>
/// <param name="Form">The form.</param>
/// <param name="Factor">Bitterness per gram of alpha acid against whole cones boiled alike; 1 for cones, 0 for oils.</param>
/// <param name="FactorUncertainty">Standard uncertainty of <paramref name="Factor"/>, relative (0.05 for 5 %).</param>
/// <param name="WortHeld">Wort that a kilogram of the form keeps back in the kettle, in litres.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record HopFormProperties(HopForm Form, double Factor, double FactorUncertainty, double WortHeld, string Source)
{
    /// <summary>Bitterness per gram of alpha acid against whole cones boiled alike, in [0, 5].</summary>
    public double Factor { get; init => field = Guard.InRange(value, 0.0, 5.0, nameof(Factor)); } = Guard.InRange(Factor, 0.0, 5.0);

    /// <summary>Standard uncertainty of the factor or yield, as a share of it.</summary>
    public double FactorUncertainty { get; init =>
        field = Guard.Share(value, nameof(FactorUncertainty)); } = Guard.Share(FactorUncertainty);

    /// <summary>Wort that a kilogram keeps back, in litres, in [0, 30].</summary>
    public double WortHeld { get; init =>
        field = Guard.InRange(value, 0.0, 30.0, nameof(WortHeld)); } = Guard.InRange(WortHeld, 0.0, 30.0);

    /// <summary>Where the figures come from.</summary>
    public string Source { get; init => field = Guard.NotBlank(value, nameof(Source)); } = Guard.NotBlank(Source);

    /// <summary>
    /// The share of the declared (iso-)alpha acid that reaches the beer whatever the boil, for forms that need no boiling; null for
    /// the others. Where it stands, it is used and <see cref="Factor"/> is only for comparison.
    /// </summary>
    public double? DirectYield { get; init => field = value is { } share ? Guard.Share(share, nameof(DirectYield)) : null; }

    /// <summary>Whether leaf and strig come with the resin.</summary>
    public bool HasPlantMatter => Form is HopForm.WholeCone or HopForm.Pellet or HopForm.LupulinPellet or HopForm.IsomerisedPellet;

    /// <summary>For example <c>pellets: 1.07 times cones, holds 6.5 L/kg</c>.</summary>
    public override string ToString() => DirectYield is { } yield
        ? string.Create(CultureInfo.InvariantCulture,
            $"{Form.InWords()}: {Printed.Percent(yield)} of its iso-alpha acid reaches the beer, holds {Printed.Chosen(WortHeld)} L/kg "
                + $"({Source})")
        : string.Create(CultureInfo.InvariantCulture,
            $"{Form.InWords()}: {Printed.Ratio(Factor)} times cones, holds {Printed.Chosen(WortHeld)} L/kg ({Source})");
}

/// <summary>The forms in which hops are sold.</summary>
public enum HopForm
{
    /// <summary>Whole dried cones, loose or pressed.</summary>
    WholeCone,

    /// <summary>Standard pellets of the whole cone (the trade's type 90).</summary>
    Pellet,

    /// <summary>Pellets enriched in lupulin (the trade's type 45): fewer leaves for the same resin.</summary>
    LupulinPellet,

    /// <summary>Pellets whose alpha acid was turned to iso-alpha acid before sale.</summary>
    IsomerisedPellet,

    /// <summary>Resin drawn with carbon dioxide; must boil to bitter.</summary>
    Co2Extract,

    /// <summary>Iso-alpha acid for dosing after the boil.</summary>
    IsoExtract,

    /// <summary>Hop oil: aroma, no bitterness.</summary>
    Oil,
}
