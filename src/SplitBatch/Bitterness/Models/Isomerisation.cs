using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

/// <summary>Rates at which alpha acid becomes iso-alpha acid in hot wort, and iso-alpha acid decays.</summary>
/// <remarks>
/// Ref. Malowicki, M. G. and Shellhammer, T. H. (2005), "Isomerization and degradation kinetics of hop (Humulus lupulus) acids in a
/// model wort-boiling system", J. Agric. Food Chem. 53, 4434-4439: first order, k1 = 7.9e11 exp(−11858/T), k2 = 4.1e12 exp(−12994/T)
/// per minute, T in kelvin; measured in a buffer of pH 5.2 from 90 to 130 °C. Below 90 °C the rates are extrapolated.
/// </remarks>
public static class Isomerisation
{
    /// <summary>Longest stretch over which a changing temperature is taken as constant, in minutes.</summary>
    private const double Stretch = 0.25;

    /// <summary>Rate of alpha acid turning into iso-alpha acid, per minute.</summary>
    public static double K1(Temperature temperature) => K1(temperature.DegreesCelsius);

    /// <summary>Rate of iso-alpha acid decaying, per minute.</summary>
    public static double K2(Temperature temperature) => K2(temperature.DegreesCelsius);

    /// <summary>A stretch at one temperature.</summary>
    public static ThermalStep Hold(Temperature temperature, Duration time) =>
        Hold(temperature.DegreesCelsius, Guard.NotNegative(time.Minutes, nameof(time)));

    /// <summary>The part of a temperature profile from a time after flame-out to the profile's end.</summary>
    public static ThermalStep Over(TemperatureProfile profile, Duration from)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return Over(profile, Guard.NotNegative(from.Minutes, nameof(from)));
    }

    internal static double K1(double celsius) => 7.9e11 * Math.Exp(-11858 / (celsius + 273.15));

    internal static double K2(double celsius) => 4.1e12 * Math.Exp(-12994 / (celsius + 273.15));

    internal static ThermalStep Hold(double celsius, double minutes) => Hold(K1(celsius), K2(celsius), minutes);

    internal static ThermalStep Hold(double k1, double k2, double minutes)
    {
        var (alpha, iso) = (Math.Exp(-k1 * minutes), Math.Exp(-k2 * minutes));
        return new(alpha, k1 / (k2 - k1) * (alpha - iso), iso, k1 * minutes);
    }

    /// <summary>The part of a profile from a time on; with <paramref name="below"/>, only its stretches cooler than that.</summary>
    internal static ThermalStep Over(TemperatureProfile profile, double from, double below = double.PositiveInfinity)
    {
        var step = ThermalStep.None;
        for (var i = 1; i < profile.Points.Length; i++)
        {
            var (a, b) = (Math.Max(from, profile.Points[i - 1].Minute), profile.Points[i].Minute);
            if (b <= a) continue;
            var pieces = profile.Points[i - 1].Celsius == profile.Points[i].Celsius ? 1 : (int)Math.Ceiling((b - a) / Stretch);
            var width = (b - a) / pieces;
            for (var piece = 0; piece < pieces; piece++)
            {
                var celsius = profile.CelsiusAt(a + (piece + 0.5) * width);
                if (celsius < below) step = step.Then(Hold(celsius, width));
            }
        }

        return step;
    }
}

/// <summary>
/// What a stretch of time at known temperatures does to alpha acid and iso-alpha acid. Both reactions are of first order, so any
/// stretch is three shares, and stretches chain.
/// </summary>
/// <param name="AlphaLeft">Share of the alpha acid that is still alpha acid at the end.</param>
/// <param name="IsoMade">Iso-alpha acid present at the end per alpha acid at the start.</param>
/// <param name="IsoLeft">Share of iso-alpha acid present at the start that is left at the end.</param>
/// <param name="Conversion">The integral of k1 over the stretch: a pure number.</param>
public readonly record struct ThermalStep(double AlphaLeft, double IsoMade, double IsoLeft, double Conversion)
{
    /// <summary>No time at all.</summary>
    public static ThermalStep None { get; } = new(1, 0, 1, 0);

    /// <summary>This stretch, then the next.</summary>
    public ThermalStep Then(ThermalStep next) => new(
        AlphaLeft * next.AlphaLeft,
        AlphaLeft * next.IsoMade + IsoMade * next.IsoLeft,
        IsoLeft * next.IsoLeft,
        Conversion + next.Conversion);
}
