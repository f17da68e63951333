using System.Globalization;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.BrewDay;

/// <summary>One line of the batch log: a value measured with an instrument, or a word or date noted.</summary>
public sealed record BatchEntry : ILogged
{
    private static readonly string[] NeedUnits = ["gravity", "volume", "temperature", "colour", "color", "carbonation", "pressure",
        "weight", "mass"];

    private BatchEntry(string id, Side? beer, string quantity, string text, double? value, BatchUnit? unit, double? uncertainty)
    {
        Id = Guard.NotBlank(id).Trim();
        Beer = beer;
        Quantity = Guard.NotBlank(quantity).Trim();
        Text = Guard.NotBlank(text).Trim();
        Value = value;
        Unit = unit;
        if (value is not { } number || unit is null) return;
        CommonValue = unit.ToCommon(number);
        if (uncertainty is not { } half) return;
        Uncertainty = Guard.NotNegative(half, "uncertainty");
        CommonUncertainty = unit.UncertaintyToCommon(number, half);
    }

    /// <inheritdoc/>
    public string Id { get; }

    /// <summary>The half it belongs to; null where it holds for both, as before the split.</summary>
    public Side? Beer { get; }

    /// <summary>What was measured or noted, for instance "original gravity" or "yeast lot".</summary>
    public string Quantity { get; }

    /// <summary>The value as written.</summary>
    public string Text { get; }

    /// <summary>The number measured, or null for a word or a date.</summary>
    public double? Value { get; }

    /// <summary>The unit of the number.</summary>
    public BatchUnit? Unit { get; }

    /// <summary>
    /// What the instrument can tell: half the width of a 95 % interval, in <see cref="Unit"/>; null where it is not known.
    /// </summary>
    public double? Uncertainty { get; }

    /// <summary>The number in the common unit of its family.</summary>
    public double? CommonValue { get; }

    /// <summary>The uncertainty in the common unit of its family.</summary>
    public double? CommonUncertainty { get; }

    /// <summary>When it was measured.</summary>
    public DateOnly? When { get; init; }

    /// <summary>Who measured it, as the user likes to say.</summary>
    public string Who { get; init; } = "";

    /// <summary>Instrument or method.</summary>
    public string Method { get; init; } = "";

    /// <summary>A remark.</summary>
    public string Note { get; init; } = "";

    /// <inheritdoc/>
    public string? Supersedes { get; init; }

    /// <inheritdoc/>
    public string? Reason { get; init; }

    /// <summary>A value measured with an instrument.</summary>
    /// <param name="id">The entry's own name.</param>
    /// <param name="beer">The half, or null for both.</param>
    /// <param name="quantity">What was measured.</param>
    /// <param name="value">The number, in <paramref name="unit"/>.</param>
    /// <param name="unit">The unit, as SG, °P, L, gal, °C, °F, pH, EBC, SRM, vol.</param>
    /// <param name="uncertainty">Half the width of a 95 % interval, in the same unit; null where it is not known.</param>
    /// <exception cref="ArgumentException">A text is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value lies where no brew does, or the uncertainty is negative.</exception>
    public static BatchEntry Measured(string id, Side? beer, string quantity, double value, string unit, double? uncertainty = null) =>
        new(id, beer, quantity, value.ToString("R", CultureInfo.InvariantCulture), value, BatchUnit.Of(unit), uncertainty);

    /// <summary>A hydrometer reading.</summary>
    /// <param name="id">The entry's own name.</param>
    /// <param name="beer">The half, or null for both.</param>
    /// <param name="quantity">What was measured, as "original gravity".</param>
    /// <param name="value">The gravity.</param>
    /// <param name="uncertainty">Half the width of a 95 % interval, in units of specific gravity (0.001 is one point).</param>
    public static BatchEntry Measured(string id, Side? beer, string quantity, Gravity value, double? uncertainty = null) =>
        Measured(id, beer, quantity, Math.Round(value.Specific, 6), "SG", uncertainty);

    /// <summary>A temperature.</summary>
    /// <param name="id">The entry's own name.</param>
    /// <param name="beer">The half, or null for both.</param>
    /// <param name="quantity">What was measured, as "pitching temperature".</param>
    /// <param name="value">The temperature.</param>
    /// <param name="uncertainty">Half the width of a 95 % interval.</param>
    public static BatchEntry Measured(string id, Side? beer, string quantity, Temperature value, TemperatureDelta? uncertainty = null) =>
        Measured(id, beer, quantity, Math.Round(value.DegreesCelsius, 6), "°C", uncertainty?.DegreesCelsius);

    /// <summary>A volume.</summary>
    /// <param name="id">The entry's own name.</param>
    /// <param name="beer">The half, or null for both.</param>
    /// <param name="quantity">What was measured, as "volume into fermenter".</param>
    /// <param name="value">The volume.</param>
    /// <param name="uncertainty">Half the width of a 95 % interval.</param>
    public static BatchEntry Measured(string id, Side? beer, string quantity, Volume value, Volume? uncertainty = null) =>
        Measured(id, beer, quantity, Math.Round(value.Liters, 6), "L", uncertainty?.Liters);

    /// <summary>A word, a lot's name or a date.</summary>
    /// <param name="id">The entry's own name.</param>
    /// <param name="beer">The half, or null for both.</param>
    /// <param name="quantity">What was noted, as "yeast lot".</param>
    /// <param name="text">The words.</param>
    /// <exception cref="ArgumentException">A text is blank, or the quantity is one that needs a number with a unit.</exception>
    public static BatchEntry Noted(string id, Side? beer, string quantity, string text) =>
        NeedUnits.Any(word => Guard.NotBlank(quantity).Contains(word, StringComparison.OrdinalIgnoreCase))
            ? throw new ArgumentException($"{quantity} needs a number with its unit; \"{text}\" has none.", nameof(text))
            : new(id, beer, quantity, text, null, null, null);

    /// <summary>For example <c>A original gravity 1.052 SG</c>.</summary>
    public override string ToString() =>
        $"{(Beer is { } side ? side.ToString() : "both")} {Quantity} {Shown()}";

    /// <summary>The value with its unit, and its uncertainty where known.</summary>
    public string Shown()
    {
        var unit = Unit is null || Unit.Name == Quantity ? "" : " " + Unit.Name;
        var half = Uncertainty is { } u ? string.Create(CultureInfo.InvariantCulture, $" ± {u}") : "";
        return Text + half + unit;
    }
}
