using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>The temperature at which water boils at an altitude.</summary>
/// <remarks>
/// Pressure of the standard atmosphere (ISO 2533:1975): p = 1013.25 (1 − 2.25577e−5 h)^5.25588 hPa with h in metres.
/// Temperature by Antoine's equation for water, 1 to 100 °C: log10 p = 8.07131 − 1730.63 / (233.426 + T), p in mmHg, T in °C.
/// Weather moves the true value by about ±0.5 °C, and wort boils a few tenths of a degree above water.
/// </remarks>
public static class BoilingPoint
{
    /// <summary>The boiling point of water at an altitude in [−500, 6000] m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside.</exception>
    public static Temperature At(Length altitude) =>
        Temperature.FromDegreesCelsius(CelsiusAt(altitude.Meters));

    internal static double CelsiusAt(double meters)
    {
        if (meters is not (>= -500 and <= 6000))
        {
            throw new ArgumentOutOfRangeException(nameof(meters), FormattableString.Invariant(
                $"An altitude of {Printed.Chosen(meters)} m is outside −500 to 6,000 m; were feet given as metres?"));
        }

        var hectopascals = 1013.25 * Math.Pow(1 - 2.25577e-5 * meters, 5.25588);
        var mercury = hectopascals * 760 / 1013.25;
        return 1730.63 / (8.07131 - Math.Log10(mercury)) - 233.426;
    }
}
