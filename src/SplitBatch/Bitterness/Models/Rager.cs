using UnitsNet;

namespace SplitBatch.Bitterness.Models;

/// <summary>Rager's formula: a boil-time curve, with a penalty for wort above 1.050.</summary>
/// <remarks>
/// Ref. Rager, J. (1990), "Calculating hop bitterness in beer", Zymurgy 13(4), 53-54. Table from memory of the published one; smooth
/// curve U % = 18.11 + 13.86 tanh((t − 31.32) / 18.27) after Hall, M. (1997), "What's your IBU?", Zymurgy, from memory. Divided by
/// 1 + (G − 1.050) / 0.2 where G, the gravity of the boil, is above 1.050.
/// </remarks>
public sealed class Rager(TimeCurve curve = TimeCurve.Fit) : IBitternessModel
{
    private static readonly (double Minutes, double Percent)[] Bands =
    [
        (5, 5.0), (10, 6.0), (15, 8.0), (20, 10.1), (25, 12.1), (30, 15.3), (35, 18.8), (40, 22.8), (45, 26.9), (50, 28.1),
        (double.PositiveInfinity, 30.0),
    ];

    /// <inheritdoc/>
    public string Name => "Rager";

    /// <inheritdoc/>
    public string Citation =>
        "Rager, J. (1990), Calculating hop bitterness in beer, Zymurgy 13(4), 53-54; smooth curve after Hall, M. (1997), What's your "
            + "IBU?, Zymurgy";

    /// <inheritdoc/>
    public ValidRange Range { get; } =
        new(1.030, 1.100, 60, "table stops at 60 min; gravities from memory of its use; boil near sea level")
        {
            LowestBoil = Temperature.FromDegreesCelsius(98),
        };

    /// <inheritdoc/>
    public string Character =>
        "Credits a long boil more than the others and never falls to nothing, even for hops at flame-out; gravity counts only "
            + "above 1.050.";

    /// <inheritdoc/>
    public double Utilisation(in Exposure exposure) =>
        (curve == TimeCurve.Table ? FromTable(exposure.EquivalentMinutes) : FromFit(exposure.EquivalentMinutes))
        / (1 + Math.Max(0, exposure.MeanGravity - 1.050) / 0.2);

    /// <summary>The author's bands, at gravities up to 1.050, as a share. Ends of bands belong to the band.</summary>
    public static double FromTable(double minutes)
    {
        foreach (var (end, percent) in Bands)
        {
            if (minutes <= end) return percent / 100;
        }

        return double.NaN;
    }

    /// <summary>The smooth curve, at gravities up to 1.050, as a share.</summary>
    public static double FromFit(double minutes) => (18.11 + 13.86 * Math.Tanh((minutes - 31.32) / 18.27)) / 100;
}

/// <summary>Which form of a formula's boil-time curve to use, where the author printed a table of bands.</summary>
public enum TimeCurve
{
    /// <summary>The smooth curve fitted to the author's table; it has no jumps for a minute more or less.</summary>
    Fit,

    /// <summary>The author's own bands of minutes.</summary>
    Table,
}
