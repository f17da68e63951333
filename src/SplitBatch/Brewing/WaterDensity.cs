using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>How much a hot volume shrinks on cooling.</summary>
/// <remarks>
/// Density of air-free water after Kell, G. S. (1975), J. Chem. Eng. Data 20, 97-105 (0 to 150 °C). Wort is taken to shrink like
/// water: about 4 % from boiling to 20 °C.
/// </remarks>
public static class WaterDensity
{
    /// <summary>The volume that <paramref name="hot"/> at a temperature in [0, 110] °C takes at 20 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside.</exception>
    public static Volume Cold(Volume hot, Temperature temperature) =>
        hot * (KilogramsPerCubicMeter(temperature.DegreesCelsius) / KilogramsPerCubicMeter(20));

    /// <summary>The volume that <paramref name="cold"/> at 20 °C takes at a temperature in [0, 110] °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside.</exception>
    public static Volume Hot(Volume cold, Temperature temperature) =>
        cold * (KilogramsPerCubicMeter(20) / KilogramsPerCubicMeter(temperature.DegreesCelsius));

    internal static double KilogramsPerCubicMeter(double celsius)
    {
        if (celsius is not (>= 0 and <= 110))
        {
            throw new ArgumentOutOfRangeException(nameof(celsius), FormattableString.Invariant(
                $"A wort temperature of {Printed.Chosen(celsius)} °C is outside 0 to 110 °C; were degrees Fahrenheit given as Celsius?"));
        }

        var t = celsius;
        var above = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - 280.54253e-12 * t))));
        return above / (1 + 16.879850e-3 * t);
    }
}
