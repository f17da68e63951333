using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>The distance between the two beers in units of the noise of one tasting, as estimated from a count.</summary>
/// <param name="Value">The likeliest d-prime: 0 at or below chance, infinite when every answer is right.</param>
/// <param name="StandardError">sqrt(pc (1 - pc) / n) over the slope of the psychometric function; null at 0 and at infinity, where it is
/// not defined.</param>
/// <param name="Interval">The exact interval: that of <see cref="ShareIntervals.ClopperPearson"/> for the share of right answers, put
/// through the psychometric function. It covers at least as often as its level says.</param>
/// <param name="LikelihoodInterval">The likelihood interval: every d-prime whose log likelihood is within half a chi-square quantile of
/// the best. Narrower, and covers about as often as its level says: with few tasters and a large difference 92 times in 100 for 95. Null
/// where tasters had repeats.</param>
public sealed record DPrimeEstimate(double Value, double? StandardError, Interval Interval, Interval? LikelihoodInterval)
{
    /// <summary>Estimates d-prime from right answers.</summary>
    /// <param name="protocol">A protocol with a known guessing chance. For a two-sided one the count is of the more frequent
    /// answer.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="correct">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static DPrimeEstimate Of(Protocol protocol, int tasters, int correct, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var exact = ShareIntervals.ClopperPearson(correct, tasters, level);
        var share = (double)correct / tasters;
        var value = protocol.DPrime(share);
        double? error = value > 0 && share < 1
            ? Math.Sqrt(share * (1 - share) / tasters) / protocol.Slope(value)
            : null;
        return new(value, error, exact.Select(protocol.DPrime), LikelyShares(protocol, tasters, correct, level).Select(protocol.DPrime));
    }

    /// <summary>The likelihood interval of the share of right answers, which is never below chance.</summary>
    private static Interval LikelyShares(Protocol protocol, int tasters, int correct, double level)
    {
        var chance = protocol.Chance;
        var best = Math.Max(chance, (double)correct / tasters);
        var z = Gauss.Quantile(1 - ((1 - level) / 2));
        var floor = LogLikelihood(best) - (z * z / 2);
        var low = LogLikelihood(chance) >= floor ? chance : Root.Of(p => LogLikelihood(p) - floor, chance, best);
        var high = LogLikelihood(1) >= floor ? 1 : Root.Of(p => LogLikelihood(p) - floor, best, 1 - 1e-16);
        return new Interval(low, high, level);

        double LogLikelihood(double p) =>
            (correct == 0 ? 0 : correct * Math.Log(p)) + (correct == tasters ? 0 : (tasters - correct) * Math.Log(1 - p));
    }

    /// <summary>For example <c>d-prime 1.72 (0.38 to 2.77)</c>.</summary>
    public override string ToString()
    {
        var high = double.IsInfinity(Interval.High) ? "no upper limit" : Number(Interval.High);
        return $"d-prime {(double.IsInfinity(Value) ? "beyond measure" : Number(Value))} ({Number(Interval.Low)} to {high}, "
            + $"{Printed.ChosenPercent(Interval.Level)})";
    }

    private static string Number(double value) => Printed.DPrime(value);
}
