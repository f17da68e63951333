namespace SplitBatch.Numbers;

/// <summary>A count foretold by every share of a range alike, against the same count foretold by one share.</summary>
/// <remarks>
/// The integral of p^x (1 - p)^(n - x) from low to high is B(x + 1, n - x + 1) times the difference of two binomial tails of n + 1
/// trials, so the factor is exact: nothing is integrated by steps.
/// </remarks>
public static class UniformMixture
{
    /// <summary>How many times better the range foretells the count than the one share does.</summary>
    /// <param name="count">Successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">At least 1.</param>
    /// <param name="low">Lower end of the range, in [0, 1).</param>
    /// <param name="high">Upper end, above <paramref name="low"/> and at most 1.</param>
    /// <param name="against">The one share, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double Factor(int count, int trials, double low, double high, double against)
    {
        Guard.Positive(trials);
        Guard.InRange(count, 0, trials);
        Guard.Share(high);
        Guard.InRange(low, 0, Math.BitDecrement(high));
        var one = ExactBinomial.Exactly(count, trials, Guard.OpenShare(against));
        return Between(count, trials, low, high) / ((trials + 1) * (high - low) * one);
    }

    // P(X > count | high) - P(X > count | low) for n + 1 trials, from whichever pair of tails is the smaller.
    private static double Between(int count, int trials, double low, double high) => count > trials * high
        ? ExactBinomial.AtLeast(count + 1, trials + 1, high) - ExactBinomial.AtLeast(count + 1, trials + 1, low)
        : ExactBinomial.AtMost(count, trials + 1, low) - ExactBinomial.AtMost(count, trials + 1, high);
}
