using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>Wort temperature after flame-out, as straight lines between points in time.</summary>
/// <example>
/// <code>
/// TemperatureProfile.From(kettle.BoilingTemperature).CoolTo(Temperature.FromDegreesCelsius(85),
/// Duration.FromMinutes(5)).Hold(Duration.FromMinutes(20))
/// </code>
/// </example>
public sealed class TemperatureProfile
{
    private TemperatureProfile(ImmutableArray<(double Minute, double Celsius)> points) => Points = points;

    /// <summary>The points: minutes after flame-out, and °C. The first stands at minute 0. The rows of a chart.</summary>
    public ImmutableArray<(double Minute, double Celsius)> Points { get; }

    /// <summary>Time from flame-out to the last point.</summary>
    public Duration Length => Duration.FromMinutes(LengthMinutes);

    internal double LengthMinutes => Points[^1].Minute;

    /// <summary>A profile that starts at a temperature in [0, 110] °C at flame-out and has no length yet.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside.</exception>
    public static TemperatureProfile From(Temperature start) => new([(0, Checked(start))]);

    /// <summary>From logged readings: minutes after flame-out (rising, the first at 0) and temperature.</summary>
    /// <exception cref="ArgumentException">Fewer than one reading, times that do not rise, or a temperature outside [0, 110]
    /// °C.</exception>
    public static TemperatureProfile FromReadings(IEnumerable<(Duration AfterFlameOut, Temperature Temperature)> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var points = readings.Select(r => (Minute: r.AfterFlameOut.Minutes, Celsius: Checked(r.Temperature))).ToImmutableArray();
        if (points.IsEmpty || points[0].Minute != 0)
        {
            throw new ArgumentException("A temperature profile starts with a reading at flame-out (0 min).", nameof(readings));
        }

        for (var i = 1; i < points.Length; i++)
        {
            if (!(points[i].Minute > points[i - 1].Minute))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"Reading {i + 1} of the temperature profile is at {Printed.Chosen(points[i].Minute)} min, not after ")
                        + FormattableString.Invariant($"{Printed.Chosen(points[i - 1].Minute)} min."), nameof(readings));
            }
        }

        return new(points);
    }

    /// <summary>The same profile, then a straight line to a temperature over a time above zero.</summary>
    public TemperatureProfile CoolTo(Temperature end, Duration time) =>
        new(Points.Add((LengthMinutes + Guard.Positive(time.Minutes, nameof(time)), Checked(end))));

    /// <summary>The same profile, then its last temperature held for a time above zero.</summary>
    public TemperatureProfile Hold(Duration time) =>
        new(Points.Add((LengthMinutes + Guard.Positive(time.Minutes, nameof(time)), Points[^1].Celsius)));

    /// <summary>
    /// The same profile, then cooling that slows as the wort nears its surroundings (Newton's law): the excess over
    /// <paramref name="surroundings"/> halves every <paramref name="halving"/>. Laid down as lines of at most a twentieth of a halving.
    /// </summary>
    public TemperatureProfile CoolTowards(Temperature surroundings, Duration halving, Duration time)
    {
        var total = Guard.Positive(time.Minutes, nameof(time));
        var half = Guard.Positive(halving.Minutes, nameof(halving));
        var around = Checked(surroundings);
        var (start, excess) = (LengthMinutes, Points[^1].Celsius - around);
        var steps = (int)Math.Clamp(Math.Ceiling(20 * total / half), 1, 2000);
        var added = Enumerable.Range(1, steps).Select(i => total * i / steps)
            .Select(t => (start + t, around + excess * Math.Pow(0.5, t / half)));
        return new(Points.AddRange(added));
    }

    /// <summary>The temperature at a time after flame-out; the last one holds beyond the end.</summary>
    public Temperature At(Duration afterFlameOut) => Temperature.FromDegreesCelsius(CelsiusAt(afterFlameOut.Minutes));

    /// <summary>For example <c>100.0 °C at flame-out to 20.0 °C after 30 min</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Printed.Fixed(Points[0].Celsius, 1)} °C at flame-out to {Printed.Fixed(Points[^1].Celsius, 1)} °C after "
            + $"{Printed.Chosen(LengthMinutes)} min");

    internal double CelsiusAt(double minute)
    {
        for (var i = 1; i < Points.Length; i++)
        {
            var (a, b) = (Points[i - 1], Points[i]);
            if (minute <= b.Minute) return a.Celsius + (b.Celsius - a.Celsius) * Math.Max(0, minute - a.Minute) / (b.Minute - a.Minute);
        }

        return Points[^1].Celsius;
    }

    private static double Checked(Temperature temperature) =>
        temperature.DegreesCelsius is >= 0 and <= 110 and var celsius
            ? celsius
            : throw new ArgumentOutOfRangeException(nameof(temperature), FormattableString.Invariant(
                $"A wort temperature of {Printed.Chosen(temperature.DegreesCelsius)} °C is outside 0 to 110 °C; were degrees Fahrenheit ")
                    + FormattableString.Invariant($"given as Celsius?"));
}
