namespace SplitBatch.Bitterness.Models;

/// <summary>Garetz's formula: a cautious boil-time curve, with corrections for gravity, hopping rate and altitude.</summary>
/// <remarks>
/// Ref. Garetz, M. (1994), Using Hops, in the form given by Hall, M. (1997), "What's your IBU?", Zymurgy (both from memory; the
/// hopping-rate factor 1 + IBU/260 confirmed in a public digest of 1995). Bitterness is the plain sum divided by GF × HF × TF:
/// GF = 1 + (BG − 1.050) / 0.2 with BG the gravity of the boil; HF = 1 + (V_final / V_boil) × IBU / 260;
/// TF = 1 + 0.02 × feet / 550. HF holds the result itself; the equation is a quadratic and is solved as one, not iterated.
/// </remarks>
/// <param name="curve">The smooth curve or the author's bands (average yeast).</param>
/// <param name="creditThinWort">Whether GF may fall below 1 for wort under 1.050; sources differ, and the cautious reading is no.</param>
public sealed class Garetz(TimeCurve curve = TimeCurve.Fit, bool creditThinWort = false) : IBitternessModel
{
    private static readonly (double Minutes, double Percent)[] Bands =
    [
        (10, 0), (15, 2), (20, 5), (25, 8), (30, 11), (35, 14), (40, 16), (45, 18), (50, 19), (60, 20), (70, 21), (80, 22),
        (double.PositiveInfinity, 23),
    ];

    /// <inheritdoc/>
    public string Name => "Garetz";

    /// <inheritdoc/>
    public string Citation => "Garetz, M. (1994), Using Hops; smooth curve and form after Hall, M. (1997), What's your IBU?, Zymurgy";

    /// <inheritdoc/>
    public ValidRange Range { get; } = new(1.030, 1.110, 90, "table stops at 90 min; gravities from memory of its use");

    /// <inheritdoc/>
    public string Character =>
        "The lowest of the formulas: nothing in the first ten minutes, and the beer's own bitterness, altitude and gravity all count "
            + "against it.";

    /// <inheritdoc/>
    public double Utilisation(in Exposure exposure)
    {
        var time = curve == TimeCurve.Table ? FromTable(exposure.EquivalentMinutes) : FromFit(exposure.EquivalentMinutes);
        var gravity = 1 + (exposure.MeanGravity - 1.050) / 0.2;
        return time / (creditThinWort ? gravity : Math.Max(1, gravity));
    }

    /// <inheritdoc/>
    public double Settle(double sum, in WortState wort)
    {
        var altitude = 1 + 0.02 * (wort.AltitudeMeters / 0.3048) / 550;
        var rate = wort.FinalLiters / wort.BoilLiters / 260;
        return (Math.Sqrt(1 + 4 * rate * sum / altitude) - 1) / (2 * rate);
    }

    /// <summary>The author's bands as a share. Ends of bands belong to the band.</summary>
    public static double FromTable(double minutes)
    {
        foreach (var (end, percent) in Bands)
        {
            if (minutes <= end) return percent / 100;
        }

        return double.NaN;
    }

    /// <summary>The smooth curve as a share, held at zero.</summary>
    public static double FromFit(double minutes) => Math.Max(0, 7.2994 + 15.0746 * Math.Tanh((minutes - 21.86) / 24.71)) / 100;
}
