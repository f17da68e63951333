using System.Globalization;
using SplitBatch.Brewing;

namespace SplitBatch.BrewDay;

/// <summary>
/// A unit of the batch log and the unit that its family is compared in: hydrometer readings in specific gravity, volumes in
/// litres, temperatures in °C, masses in grams, times in minutes, pressures in bar, colours in EBC, carbonation in volumes of CO2.
/// </summary>
/// <remarks>
/// 1 SRM = 1.97 EBC and 1 volume of CO2 = 1.96 g/L are common conversions, from memory. A unit not known here is a family of
/// its own: its values can only be compared with values in the same unit.
/// </remarks>
public sealed class BatchUnit
{
    private static readonly Dictionary<string, BatchUnit> Known = Table()
        .ToDictionary(unit => unit.Name, StringComparer.OrdinalIgnoreCase);
    private readonly Func<double, double> convert;

    private BatchUnit(string name, string common, double low, double high, Func<double, double> convert)
    {
        Name = name;
        Common = common;
        this.convert = convert;
        Low = low;
        High = high;
    }

    /// <summary>The unit as written.</summary>
    public string Name { get; }

    /// <summary>The unit that its family is compared in.</summary>
    public string Common { get; }

    private double Low { get; }

    private double High { get; }

    /// <summary>The unit of that name; one of its own family where it is not known.</summary>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    public static BatchUnit Of(string name)
    {
        var trimmed = Guard.NotBlank(name).Trim();
        return Known.GetValueOrDefault(trimmed) ?? new BatchUnit(trimmed, trimmed, double.MinValue, double.MaxValue, value => value);
    }

    /// <summary>A value in the family's common unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies where no brew does.</exception>
    public double ToCommon(double value) =>
        Guard.InRange(convert(Guard.InRange(value, -1e12, 1e12)), Low, High,
            $"{value.ToString(CultureInfo.InvariantCulture)} {Name} in {Common}");

    /// <summary>The half-width of an uncertainty in the family's common unit, at a value.</summary>
    public double UncertaintyToCommon(double value, double uncertainty) => Math.Abs(convert(value + uncertainty) - convert(value));

    private static IEnumerable<BatchUnit> Table()
    {
        yield return new("SG", "SG", 0.980, 1.200, value => Gravity.FromSpecific(value).Specific);
        foreach (var name in new[] { "°P", "P", "Plato" })
            yield return new(name, "SG", 0.980, 1.200, value => Gravity.FromPlato(value).Specific);
        foreach (var (name, litres) in new[] { ("L", 1), ("mL", 0.001), ("hL", 100), ("gal", 3.785411784),
            ("qt", 0.946352946) }) yield return new(name, "L", 0, 1e6, value => value * litres);
        foreach (var name in new[] { "°C", "C" }) yield return new(name, "°C", -40, 130, value => value);
        foreach (var name in new[] { "°F", "F" }) yield return new(name, "°C", -40, 130, value => (value - 32) / 1.8);
        foreach (var (name, grams) in new[] { ("g", 1), ("mg", 0.001), ("kg", 1000), ("oz", 28.349523125),
            ("lb", 453.59237) }) yield return new(name, "g", 0, 1e9, value => value * grams);
        foreach (var (name, minutes) in new[] { ("min", 1), ("s", 1 / 60.0), ("h", 60),
            ("d", 1440) }) yield return new(name, "min", 0, 1e8, value => value * minutes);
        foreach (var (name, bar) in new[] { ("bar", 1), ("kPa", 0.01),
            ("psi", 0.0689475729) }) yield return new(name, "bar", -1, 100, value => value * bar);
        yield return new("EBC", "EBC", 0, 1000, value => value);
        yield return new("SRM", "EBC", 0, 1000, value => value * 1.97);
        foreach (var name in new[] { "vol", "vol CO2", "volumes" }) yield return new(name, "vol", 0, 8, value => value);
        yield return new("g/L CO2", "vol", 0, 8, value => value / 1.96);
        yield return new("pH", "pH", 0, 14, value => value);
        foreach (var name in new[] { "%", "% vol", "% ABV" }) yield return new(name, "%", -1e6, 1e6, value => value);
    }
}
