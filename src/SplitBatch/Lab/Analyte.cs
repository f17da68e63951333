using System.Globalization;

namespace SplitBatch.Lab;

/// <summary>Something a laboratory measures in a beer, with the unit its values are kept in and the units it may be given in.</summary>
/// <remarks>
/// Two analytes are equal when name and unit are. Conversions: colour 1 SRM = 1.97 EBC (common practice of both method
/// collections, from memory); turbidity 1 EBC formazin unit = 4 NTU (from memory).
/// </remarks>
public sealed class Analyte : IEquatable<Analyte>
{
    private readonly Dictionary<string, double> factors;

    private Analyte(string name, string unit, double low, double high, int decimals, params (string Unit, double Factor)[] others)
    {
        Name = name;
        Unit = unit;
        Low = low;
        High = high;
        Decimals = decimals;
        factors = new(StringComparer.OrdinalIgnoreCase) { [unit] = 1 };
        foreach (var (other, factor) in others) factors[other] = factor;
    }

    /// <summary>Bitterness units by iso-octane extraction (absorbance at 275 nm).</summary>
    public static Analyte Bitterness { get; } = new("bitterness", "BU", 0, 300, 1, ("IBU", 1), ("EBU", 1));

    /// <summary>Iso-alpha acids by liquid chromatography, mg/L.</summary>
    public static Analyte IsoAlphaAcids { get; } = new("iso-alpha acids", "mg/L", 0, 300, 1, ("ppm", 1));

    /// <summary>Alcohol by volume, %.</summary>
    public static Analyte Alcohol { get; } =
        new("alcohol", "% vol", 0, 30, 2, ("%vol", 1), ("% ABV", 1), ("ABV", 1), ("%", 1), ("vol%", 1));

    /// <summary>pH.</summary>
    public static Analyte Ph { get; } = new("pH", "pH", 1, 10, 2, ("", 1), ("-", 1), ("1", 1));

    /// <summary>Colour, EBC units.</summary>
    public static Analyte Colour { get; } = new("colour", "EBC", 0, 1000, 1, ("SRM", 1.97), ("ASBC", 1.97));

    /// <summary>Turbidity (haze), EBC formazin units.</summary>
    public static Analyte Turbidity { get; } = new("turbidity", "EBC", 0, 500, 2, ("EBC FU", 1), ("NTU", 0.25), ("FNU", 0.25));

    /// <summary>The analytes known by name.</summary>
    public static IReadOnlyList<Analyte> Known { get; } = [Bitterness, IsoAlphaAcids, Alcohol, Ph, Colour, Turbidity];

    /// <summary>Its name, as in the analyte column.</summary>
    public string Name { get; }

    /// <summary>The unit its values are kept and shown in.</summary>
    public string Unit { get; }

    /// <summary>The lowest value a beer can show; anything below is refused.</summary>
    public double Low { get; }

    /// <summary>The highest value a beer can show; anything above is refused.</summary>
    public double High { get; }

    /// <summary>Decimals worth printing.</summary>
    public int Decimals { get; }

    /// <summary>The units it may be given in.</summary>
    public IEnumerable<string> AcceptedUnits => factors.Keys.Where(unit => unit.Length > 1);

    /// <summary>An analyte of one's own, in one unit.</summary>
    /// <param name="name">Its name, not blank.</param>
    /// <param name="unit">Its unit, not blank.</param>
    /// <param name="decimals">Decimals worth printing, in [0, 6].</param>
    /// <exception cref="ArgumentException">A text is blank.</exception>
    public static Analyte Of(string name, string unit, int decimals = 2) =>
        new(Guard.NotBlank(name), Guard.NotBlank(unit), double.MinValue, double.MaxValue, Guard.InRange(decimals, 0, 6));

    /// <summary>The known analyte of a name or of one of its usual other names (BU, IBU, HPLC, ABV, haze, color), or null.</summary>
    public static Analyte? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Trim().ToUpperInvariant() switch
        {
            "BITTERNESS" or "BU" or "IBU" or "EBU" or "BITTERNESS UNITS" => Bitterness,
            "ISO-ALPHA ACIDS" or "ISO-ALPHA" or "IAA" or "ISO-ALPHA-ACIDS" or "ISO ALPHA ACIDS" or "HPLC" => IsoAlphaAcids,
            "ALCOHOL" or "ABV" or "ALCOHOL BY VOLUME" => Alcohol,
            "PH" => Ph,
            "COLOUR" or "COLOR" => Colour,
            "TURBIDITY" or "HAZE" => Turbidity,
            _ => null,
        };
    }

    /// <summary>A value in this analyte's own unit.</summary>
    /// <param name="value">A finite number, in <paramref name="unit"/>.</param>
    /// <param name="unit">One of <see cref="AcceptedUnits"/>.</param>
    /// <exception cref="ArgumentException">The unit is not one of this analyte's; the message lists those that are.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value lies where no beer does.</exception>
    public double InOwnUnit(double value, string unit) => Guard.InRange(value * Factor(unit), Low, High, Name);

    /// <summary>How many of its own units one of <paramref name="unit"/> is; for differences and precisions, which may be small.</summary>
    /// <param name="unit">One of <see cref="AcceptedUnits"/>.</param>
    /// <exception cref="ArgumentException">The unit is not one of this analyte's; the message lists those that are.</exception>
    public double Factor(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return factors.TryGetValue(unit.Trim(), out var factor)
            ? factor
            : throw new ArgumentException($"{unit} is not a unit of {Name}; accepted: {string.Join(", ", AcceptedUnits)}.", nameof(unit));
    }

    /// <summary>A value as text with its unit: <c>25.0 BU</c>.</summary>
    public string Format(double value)
    {
        return Printed.Fixed(value, Decimals, Unit == Name ? "" : Unit);
    }

    /// <inheritdoc/>
    public bool Equals(Analyte? other) => other is not null && Name == other.Name && Unit == other.Unit;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Analyte);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Unit);

    /// <summary>Name and unit: <c>bitterness [BU]</c>.</summary>
    public override string ToString() => Unit == Name ? Name : $"{Name} [{Unit}]";
}
