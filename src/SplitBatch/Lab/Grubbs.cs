using MathNet.Numerics.Distributions;

namespace SplitBatch.Lab;

/// <summary>Grubbs' tests: whether one value, or a pair at one end, lies too far from the others.</summary>
/// <remarks>
/// Ref. ISO 5725-2 (1994), 7.3.4 and table 5; Grubbs 1969, Technometrics 11, 1-21; Grubbs and Beck 1972, Technometrics 14, 847-854.
/// Either end may be the suspect, so half of alpha is spent on each.
/// </remarks>
public static class Grubbs
{
    // Pair at one end: 1 % and 5 %, for 4 to 12 values. From memory of the standard's table, confirmed by simulation (reference/lab).
    private static readonly (double At1, double At5)[] Pairs =
    [
        (0.0000, 0.0002), (0.0018, 0.0090), (0.0116, 0.0349), (0.0308, 0.0708), (0.0563, 0.1101), (0.0851, 0.1492), (0.1150, 0.1864),
        (0.1448, 0.2213), (0.1738, 0.2537),
    ];

    /// <summary>The critical value of the distance from the mean in standard deviations, for one suspect at either end.</summary>
    /// <param name="count">Number of values, in [3, 1000].</param>
    /// <param name="alpha">Level as a share, usually 0.05 or 0.01.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static double Critical(int count, double alpha)
    {
        Guard.InRange(count, 3, 1000);
        Guard.OpenShare(alpha);
        var t = StudentT.InvCDF(0, 1, count - 2, 1 - alpha / (2 * count));
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + t * t));
    }

    /// <summary>Critical values of the ratio of sums of squares without and with a pair at one end; smaller is more suspicious.</summary>
    /// <param name="count">Number of values, in [4, 12].</param>
    /// <exception cref="ArgumentOutOfRangeException">The count lies outside.</exception>
    public static (double At5, double At1) CriticalPair(int count)
    {
        var (at1, at5) = Pairs[Guard.InRange(count, 4, 12) - 4];
        return (at5, at1);
    }

    /// <summary>
    /// Tests the value farthest from the mean and, where none is flagged and there are 4 to 12 values, the pair at either end.
    /// </summary>
    /// <returns>The finding that counts; null with fewer than three values or where all are equal. Two values alone can never name the
    /// wrong one.</returns>
    public static OutlierFinding? Test(Replicates sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        if (sample.Count < 3 || sample.Range == 0) return null;
        var single = One(sample);
        if (single.IsFlagged || sample.Count is < 4 or > 12) return single;
        var sorted = sample.Values.Order().ToList();
        var pair = new[] { Pair(sample, sorted, sorted[..2], sorted[2..]), Pair(sample, sorted, sorted[^2..], sorted[..^2]) }
            .MinBy(finding => finding.Statistic)!;
        return pair.IsFlagged ? pair : single;
    }

    private static OutlierFinding One(Replicates sample)
    {
        var suspect = sample.Values.MaxBy(value => Math.Abs(value - sample.Mean));
        var statistic = Math.Abs(suspect - sample.Mean) / sample.StandardDeviation!.Value;
        var (at5, at1) = (Critical(sample.Count, 0.05), Critical(sample.Count, 0.01));
        var status = statistic > at1 ? OutlierStatus.Outlier : statistic > at5 ? OutlierStatus.Straggler : OutlierStatus.Correct;
        return new("Grubbs, one value", sample.Label, [suspect], statistic, at5, at1, status, sample.Analyte);
    }

    private static OutlierFinding Pair(Replicates sample, List<double> all, List<double> suspects, List<double> rest)
    {
        var statistic = SumOfSquares(rest) / SumOfSquares(all);
        var (at5, at1) = CriticalPair(all.Count);
        var status = statistic < at1 ? OutlierStatus.Outlier : statistic < at5 ? OutlierStatus.Straggler : OutlierStatus.Correct;
        return new("Grubbs, two values", sample.Label, suspects, statistic, at5, at1, status, sample.Analyte);
    }

    private static double SumOfSquares(List<double> values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean));
    }
}
