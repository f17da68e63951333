using MathNet.Numerics;

namespace SplitBatch.Numbers;

/// <summary>Intervals for a share from a count: how many of how many.</summary>
/// <remarks>Two-sided, equal-tailed. Limits are accurate to about 1e-10.</remarks>
public static class ShareIntervals
{
    /// <summary>The exact interval: it covers the true share at least as often as its level says, usually more often.</summary>
    /// <param name="count">Successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">At least 1.</param>
    /// <param name="level">Level of confidence, above 0 and below 1.</param>
    /// <remarks>Ref. Clopper and Pearson (1934), Biometrika 26, 404.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static Interval ClopperPearson(int count, int trials, double level = 0.95)
    {
        Check(count, trials, level);
        var tail = (1 - level) / 2;
        return new Interval(LowerLimit(count, trials, tail), UpperLimit(count, trials, tail), level);
    }

    /// <summary>The score interval: covers the true share about as often as its level says, on average.</summary>
    /// <inheritdoc cref="ClopperPearson"/>
    /// <remarks>Ref. Wilson (1927), J. Am. Stat. Assoc. 22, 209. Without continuity correction.</remarks>
    public static Interval Wilson(int count, int trials, double level = 0.95)
    {
        Check(count, trials, level);
        var z = Gauss.Quantile(1 - ((1 - level) / 2));
        double n = trials, p = count / n, z2 = z * z / n;
        var middle = (p + (z2 / 2)) / (1 + z2);
        var half = z / (1 + z2) * Math.Sqrt((p * (1 - p) / n) + (z2 / (4 * n)));
        return new Interval(count == 0 ? 0 : middle - half, count == trials ? 1 : middle + half, level);
    }

    /// <summary>The equal-tailed interval of the posterior that starts from Jeffreys' prior, Beta(1/2, 1/2).</summary>
    /// <inheritdoc cref="ClopperPearson"/>
    /// <remarks>
    /// The limits are quantiles throughout; some texts set them to 0 at no success and to 1 at no failure, which is not done here.
    /// </remarks>
    public static Interval Jeffreys(int count, int trials, double level = 0.95)
    {
        Check(count, trials, level);
        var tail = (1 - level) / 2;
        return new Interval(
            BetaQuantile(tail, count + 0.5, trials - count + 0.5),
            BetaQuantile(1 - tail, count + 0.5, trials - count + 0.5),
            level);
    }

    /// <summary>
    /// The largest share not refuted from below: the one at which so few successes still have the chance <paramref name="tail"/>.
    /// One-sided.
    /// </summary>
    /// <param name="count">Successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">At least 1.</param>
    /// <param name="tail">The one-sided error, above 0 and below 1: 0.05 gives the 95 % upper limit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double UpperLimit(int count, int trials, double tail)
    {
        Check(count, trials, tail);
        if (count == trials) return 1;
        if (count == 0) return -ExactBinomial.ExpLessOne(Math.Log(tail) / trials);
        var log = Math.Log(tail);
        return Root.Of(p => ExactBinomial.LogAtMost(count, trials, p) - log, 1e-300, 1 - 1e-16);
    }

    /// <summary>
    /// The smallest share not refuted from above: the one at which so many successes still have the chance <paramref name="tail"/>.
    /// One-sided.
    /// </summary>
    /// <inheritdoc cref="UpperLimit"/>
    public static double LowerLimit(int count, int trials, double tail)
    {
        Check(count, trials, tail);
        if (count == 0) return 0;
        if (count == trials) return Math.Exp(Math.Log(tail) / trials);
        var log = Math.Log(tail);
        return Root.Of(p => ExactBinomial.LogAtLeast(count, trials, p) - log, 1e-16, 1 - 1e-16);
    }

    /// <summary>The value below which a beta-distributed share lies with the given chance.</summary>
    internal static double BetaQuantile(double chance, double a, double b)
    {
        if (chance <= 0) return 0;
        if (chance >= 1) return 1;
        // On the scale of the odds' logarithm both ends are reachable, however skew the distribution.
        var logit = Root.Of(t => SpecialFunctions.BetaRegularized(a, b, SpecialFunctions.Logistic(t)) - chance, -700, 36);
        return SpecialFunctions.Logistic(logit);
    }

    private static void Check(int count, int trials, double level)
    {
        Counts.Check(count, trials);
        Guard.OpenShare(level);
    }
}
