using MathNet.Numerics;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Protocols;

/// <summary>Two out of five: guess 1/10.</summary>
/// <remarks>
/// The taster is taken to choose the grouping into two and three with the smallest sum of squares within the groups. On one dimension that
/// is either the two highest or the two lowest cups, and it is the two highest when the middle cup lies below the mean of the other four.
/// With m the strongest of the three cups of the one beer, T the sum of what the pair lies above m and S the sum of what the other two lie
/// below it, the pair is picked as the two highest when T &gt; S &gt; 0. Before truncation (T, S) is normal with means (2 d', 0),
/// variances 6 and covariance -4; that the parts of each sum are positive adds the factors erf(T/2) and erf(S/2). The lowest pair is the
/// same at -d'. Own derivation; checked against simulation.
/// </remarks>
internal sealed class TwoOutOfFiveProtocol() : Protocol("two-out-of-five", "2-out-of-5", "2 of 5", "two of five")
{
    // The conditional spread of S given T, and the spread of T.
    private static readonly double SpreadT = Math.Sqrt(6), SpreadS = Math.Sqrt(6 - (16.0 / 6));

    public override string Question => "Can tasters tell the two beers apart at all, without being told what to look for?";

    public override string Task =>
        "Taste five cups in the order given. Two are of one beer, three of the other. Name the two; guess if unsure.";

    public override string Advice =>
        "Guessing is right only once in ten, so few tasters show a clear difference; five cups tire the palate and cost beer. Better for "
            + "looks than for bitter beer.";

    public override int Pours => 5;

    public override double Chance => 0.1;

    private protected override double Correct(double d) => d == 0 ? 0.1 : Highest(d) + Highest(-d);

    private protected override double Rise(double d)
    {
        const double step = 1e-4;
        if (d < step) return (Correct(d + step) - Correct(d)) / step;
        return (Correct(d + step) - Correct(d - step)) / (2 * step);
    }

    private static double Highest(double d)
    {
        var mean = 2 * d;
        double low = Math.Max(0, mean - (9 * SpreadT)), high = Math.Max(0, mean + (9 * SpreadT));
        return high <= low
            ? 0
            : 3 * Gauss.BumpIntegral(t => Gauss.Density((t - mean) / SpreadT) / SpreadT * Positive(t) * Inner(t, mean), low, high);
    }

    private static double Inner(double t, double mean)
    {
        var centre = -4.0 / 6 * (t - mean);
        double low = Math.Max(0, centre - (9 * SpreadS)), high = Math.Min(t, centre + (9 * SpreadS));
        return high <= low ? 0 : Gauss.BumpIntegral(s => Gauss.Density((s - centre) / SpreadS) / SpreadS * Positive(s), low, high);
    }

    // The chance that both parts of a sum t of two normal values with variance 1 are positive.
    private static double Positive(double t) => SpecialFunctions.Erf(t / 2);
}
