namespace SplitBatch.Numbers;

/// <summary>Exact binomial probabilities: no normal approximation anywhere, also deep in the tails.</summary>
/// <remarks>
/// The point probability is the saddle-point form of Loader; a tail is the sum of the point probabilities on the short side of the mean,
/// started at its largest term, so that small tails keep their relative accuracy (about 1e-13 for n up to some thousands).
/// <para>Ref. C. Loader (2000), Fast and Accurate Computation of Binomial Probabilities.</para>
/// </remarks>
public static class ExactBinomial
{
    /// <summary>The chance of exactly <paramref name="count"/> successes in <paramref name="trials"/>.</summary>
    /// <param name="count">Any whole number; outside [0, trials] the chance is 0.</param>
    /// <param name="trials">Zero or more.</param>
    /// <param name="share">Chance of success in one trial, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative trials, or a share outside [0, 1].</exception>
    public static double Exactly(int count, int trials, double share) => Math.Exp(LogExactly(count, trials, share));

    /// <summary>The chance of <paramref name="count"/> or more successes: the upper tail, <paramref name="count"/> included.</summary>
    /// <param name="count">Any whole number.</param>
    /// <param name="trials">Zero or more.</param>
    /// <param name="share">Chance of success in one trial, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative trials, or a share outside [0, 1].</exception>
    public static double AtLeast(int count, int trials, double share) => Math.Exp(LogAtLeast(count, trials, share));

    /// <summary>The chance of <paramref name="count"/> or fewer successes: the lower tail, <paramref name="count"/> included.</summary>
    /// <param name="count">Any whole number.</param>
    /// <param name="trials">Zero or more.</param>
    /// <param name="share">Chance of success in one trial, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative trials, or a share outside [0, 1].</exception>
    public static double AtMost(int count, int trials, double share) => Math.Exp(LogAtMost(count, trials, share));

    /// <summary>Natural logarithm of <see cref="Exactly"/>; usable where the chance itself is below the smallest double.</summary>
    /// <inheritdoc cref="Exactly"/>
    public static double LogExactly(int count, int trials, double share)
    {
        Guard.NotNegative(trials);
        Guard.Share(share);
        return LogPoint(count, trials, share, 1 - share);
    }

    /// <summary>Natural logarithm of <see cref="AtLeast"/>; usable where the tail itself is below the smallest double.</summary>
    /// <inheritdoc cref="AtLeast"/>
    public static double LogAtLeast(int count, int trials, double share)
    {
        Guard.NotNegative(trials);
        Guard.Share(share);
        if (count <= 0) return 0;
        if (count > trials) return double.NegativeInfinity;
        return count > trials * share
            ? LogShortTail(count, trials, share, 1 - share)
            : LogComplement(LogShortTail(trials - count + 1, trials, 1 - share, share));
    }

    /// <summary>Natural logarithm of <see cref="AtMost"/>; usable where the tail itself is below the smallest double.</summary>
    /// <inheritdoc cref="AtMost"/>
    public static double LogAtMost(int count, int trials, double share)
    {
        Guard.NotNegative(trials);
        Guard.Share(share);
        if (count < 0) return double.NegativeInfinity;
        if (count >= trials) return 0;
        return count < trials * share
            ? LogShortTail(trials - count, trials, 1 - share, share)
            : LogComplement(LogShortTail(count + 1, trials, share, 1 - share));
    }

    /// <summary>The smallest count whose upper tail is no more than <paramref name="alpha"/>; trials + 1 where no count is.</summary>
    /// <param name="trials">Zero or more.</param>
    /// <param name="share">Chance of success in one trial under the hypothesis to be rejected, in [0, 1].</param>
    /// <param name="alpha">Largest tail allowed, above 0 and below 1. A tail that equals it to 1e-12 counts as reached.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int CriticalCount(int trials, double share, double alpha)
    {
        Guard.NotNegative(trials);
        Guard.Share(share);
        Guard.OpenShare(alpha);
        var low = 0; // AtLeast(low) > alpha: it is 1 at 0.
        var high = trials + 1; // AtLeast(high) = 0.
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (Reaches(AtLeast(middle, trials, share), alpha)) high = middle;
            else low = middle;
        }

        return high;
    }

    /// <summary>The largest count whose lower tail is no more than <paramref name="beta"/>; -1 where no count is.</summary>
    /// <param name="trials">Zero or more.</param>
    /// <param name="share">Chance of success in one trial under the hypothesis to be ruled out, in [0, 1].</param>
    /// <param name="beta">Largest tail allowed, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int LargestCount(int trials, double share, double beta)
    {
        Guard.NotNegative(trials);
        Guard.Share(share);
        Guard.OpenShare(beta);
        var low = -1; // AtMost(low) = 0.
        var high = trials; // AtMost(high) = 1.
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (Reaches(AtMost(middle, trials, share), beta)) low = middle;
            else high = middle;
        }

        return low;
    }

    /// <summary>Whether a tail is no more than its limit, a tie within rounding included.</summary>
    internal static bool Reaches(double tail, double limit) => tail <= limit * (1 + 1e-12);

    /// <summary>Point probability with both shares given, so that the smaller one need not be a difference.</summary>
    internal static double LogPoint(int x, int n, double p, double q)
    {
        if (x < 0 || x > n) return double.NegativeInfinity;
        if (p == 0) return x == 0 ? 0 : double.NegativeInfinity;
        if (q == 0) return x == n ? 0 : double.NegativeInfinity;
        if (x == 0) return n * (p < 0.5 ? LogOnePlus(-p) : Math.Log(q));
        if (x == n) return n * (p > 0.5 ? LogOnePlus(-q) : Math.Log(p));
        var saddle = Stirling.Error(n) - Stirling.Error(x) - Stirling.Error(n - x)
            - Stirling.Deviance(x, n * p) - Stirling.Deviance(n - x, n * q);
        return saddle + (0.5 * Math.Log(n / (2 * Math.PI * x * (n - x))));
    }

    /// <summary>log(1 + x) without loss for small x.</summary>
    internal static double LogOnePlus(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * (x / (sum - 1));
    }

    /// <summary>log(1 - e^a) for a of log(1/2) or less, as a tail on the short side of the median always is.</summary>
    private static double LogComplement(double a) => LogOnePlus(-Math.Exp(a));

    /// <summary>e^x - 1 without loss for small x (Kahan's form), for x above -745, where e^x is not yet 0.</summary>
    internal static double ExpLessOne(double x)
    {
        var power = Math.Exp(x);
        if (power == 1) return x;
        return (power - 1) * (x / Math.Log(power));
    }

    // The upper tail from k, which lies above the mean: falling terms, so a short sum.
    private static double LogShortTail(int k, int n, double p, double q)
    {
        var first = LogPoint(k, n, p, q);
        if (double.IsNegativeInfinity(first)) return first;
        var odds = p / q;
        double sum = 1, term = 1;
        for (var j = k; j < n; j++)
        {
            term *= (n - j) / (j + 1.0) * odds;
            sum += term;
            if (term < sum * 1e-18) break;
        }

        return first + Math.Log(sum);
    }
}
