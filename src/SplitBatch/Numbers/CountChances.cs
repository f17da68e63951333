
namespace SplitBatch.Numbers;

/// <summary>The chance of each count of successes, from none up, and what is made of such lists.</summary>
internal static class CountChances
{
    /// <summary>A binomial's.</summary>
    public static double[] Binomial(int trials, double share) =>
        [.. Enumerable.Range(0, trials + 1).Select(count => ExactBinomial.Exactly(count, trials, share))];

    /// <summary>Those of the sum of two independent counts.</summary>
    public static double[] Sum(double[] one, double[] other)
    {
        var sum = new double[one.Length + other.Length - 1];
        for (var i = 0; i < one.Length; i++)
        {
            if (one[i] == 0) continue;
            for (var j = 0; j < other.Length; j++) sum[i + j] += one[i] * other[j];
        }

        return sum;
    }

    /// <summary>The chance of a count or fewer.</summary>
    public static double AtMost(double[] chances, int count)
    {
        var last = Math.Min(count, chances.Length - 1);
        double sum = 0;
        for (var i = 0; i <= last; i++) sum += chances[i];
        return Math.Min(1, sum);
    }

    /// <summary>The chance of a count or more; the smallest terms are added first.</summary>
    public static double AtLeast(double[] chances, int count)
    {
        double sum = 0;
        for (var i = chances.Length - 1; i >= Math.Max(0, count); i--) sum += chances[i];
        return Math.Min(1, sum);
    }
}
