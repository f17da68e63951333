using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch.Trials.Files;

/// <summary>The units that a file may name, and what they are. Gallons, quarts and fluid ounces are those of the US.</summary>
internal static class UnitText
{
    private static readonly Dictionary<string, MassUnit> Masses = new(StringComparer.OrdinalIgnoreCase)
    {
        ["g"] = MassUnit.Gram, ["kg"] = MassUnit.Kilogram, ["mg"] = MassUnit.Milligram, ["oz"] = MassUnit.Ounce, ["lb"] = MassUnit.Pound,
    };

    private static readonly Dictionary<string, VolumeUnit> Volumes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["L"] = VolumeUnit.Liter, ["mL"] = VolumeUnit.Milliliter, ["hL"] = VolumeUnit.Hectoliter, ["gal"] = VolumeUnit.UsGallon,
        ["qt"] = VolumeUnit.UsQuart, ["fl oz"] = VolumeUnit.UsOunce,
    };

    private static readonly Dictionary<string, TemperatureUnit> Temperatures = new(StringComparer.OrdinalIgnoreCase)
    {
        ["°C"] = TemperatureUnit.DegreeCelsius, ["C"] = TemperatureUnit.DegreeCelsius,
        ["°F"] = TemperatureUnit.DegreeFahrenheit, ["F"] = TemperatureUnit.DegreeFahrenheit, ["K"] = TemperatureUnit.Kelvin,
    };

    private static readonly Dictionary<string, DurationUnit> Durations = new(StringComparer.OrdinalIgnoreCase)
    {
        ["min"] = DurationUnit.Minute, ["h"] = DurationUnit.Hour, ["s"] = DurationUnit.Second, ["d"] = DurationUnit.Day,
    };

    private static readonly Dictionary<string, LengthUnit> Lengths = new(StringComparer.OrdinalIgnoreCase)
    {
        ["m"] = LengthUnit.Meter, ["ft"] = LengthUnit.Foot,
    };

    /// <summary>The accepted mass units, as text.</summary>
    public static string MassUnits => List(Masses);

    /// <summary>The accepted volume units, as text.</summary>
    public static string VolumeUnits => List(Volumes);

    /// <summary>The accepted temperature units, as text.</summary>
    public static string TemperatureUnits => List(Temperatures);

    /// <summary>The accepted duration units, as text.</summary>
    public static string DurationUnits => List(Durations);

    /// <summary>The accepted length units, as text.</summary>
    public static string LengthUnits => List(Lengths);

    /// <summary>A mass, or null when the unit is not one of <see cref="MassUnits"/>.</summary>
    public static Mass? Mass(double value, string? unit) =>
        unit is not null && Masses.TryGetValue(unit, out var known) ? UnitsNet.Mass.From(value, known) : null;

    /// <summary>A volume, or null when the unit is not one of <see cref="VolumeUnits"/>.</summary>
    public static Volume? Volume(double value, string? unit) =>
        unit is not null && Volumes.TryGetValue(unit, out var known) ? UnitsNet.Volume.From(value, known) : null;

    /// <summary>A temperature, or null when the unit is not one of <see cref="TemperatureUnits"/>.</summary>
    public static Temperature? Temperature(double value, string? unit) =>
        unit is not null && Temperatures.TryGetValue(unit, out var known) ? UnitsNet.Temperature.From(value, known) : null;

    /// <summary>A duration, or null when the unit is not one of <see cref="DurationUnits"/>.</summary>
    public static Duration? Duration(double value, string? unit) =>
        unit is not null && Durations.TryGetValue(unit, out var known) ? UnitsNet.Duration.From(value, known) : null;

    /// <summary>A length, or null when the unit is not one of <see cref="LengthUnits"/>.</summary>
    public static Length? Length(double value, string? unit) =>
        unit is not null && Lengths.TryGetValue(unit, out var known) ? UnitsNet.Length.From(value, known) : null;

    private static string List<T>(Dictionary<string, T> units) => string.Join(", ", units.Keys);
}
