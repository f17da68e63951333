using MathNet.Numerics.Distributions;

namespace SplitBatch.Lab;

/// <summary>Cochran's test: whether the replicates of one sample scatter more than those of the others.</summary>
/// <remarks>
/// Ref. ISO 5725-2 (1994), 7.3.3; Cochran 1941, Annals of Eugenics 11, 47-52. The statistic is the largest variance over
/// the sum of all. The critical value is the beta quantile at 1 - alpha/p, with (n - 1)/2 and (p - 1)(n - 1)/2 degrees: Bonferroni's
/// first bound, which differs from the exact value by less than 0.001 at the levels used.
/// </remarks>
public static class Cochran
{
    internal const string Name = "Cochran";

    /// <summary>The critical value of the statistic.</summary>
    /// <param name="samples">Number of samples p, in [2, 200].</param>
    /// <param name="replicates">Replicates of each n, in [2, 100].</param>
    /// <param name="alpha">Level as a share, usually 0.05 or 0.01.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static double Critical(int samples, int replicates, double alpha)
    {
        Guard.InRange(samples, 2, 200);
        Guard.InRange(replicates, 2, 100);
        Guard.OpenShare(alpha);
        var degrees = replicates - 1;
        return Beta.InvCDF(degrees / 2.0, (samples - 1) * degrees / 2.0, 1 - alpha / samples);
    }

    /// <summary>
    /// Tests the sample with the largest variance; null with fewer than two samples that have replicates, or where nothing scatters at
    /// all.
    /// </summary>
    /// <param name="samples">Samples of one analyte. Where their counts differ, the most frequent one is taken, as the standard
    /// says.</param>
    public static OutlierFinding? Test(IReadOnlyList<Replicates> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var usable = samples.Where(sample => sample.Count >= 2).ToList();
        var sum = usable.Sum(Variance);
        if (usable.Count < 2 || sum == 0) return null;
        var count = usable.GroupBy(sample => sample.Count).OrderByDescending(group => group.Count()).ThenBy(group => group.Key)
            .First().Key;
        var worst = usable.MaxBy(Variance)!;
        var statistic = Variance(worst) / sum;
        var (at5, at1) = (Critical(usable.Count, count, 0.05), Critical(usable.Count, count, 0.01));
        var status = statistic > at1 ? OutlierStatus.Outlier : statistic > at5 ? OutlierStatus.Straggler : OutlierStatus.Correct;
        return new(Name, worst.Label, worst.Values, statistic, at5, at1, status, worst.Analyte);
    }

    private static double Variance(Replicates sample) => sample.StandardDeviation!.Value * sample.StandardDeviation.Value;
}
