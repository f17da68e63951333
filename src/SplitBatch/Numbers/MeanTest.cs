namespace SplitBatch.Numbers;

/// <summary>The mean of a few numbers with its interval, and the interval of one more: Student's t.</summary>
/// <param name="Count">How many numbers.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation, divisor n - 1.</param>
/// <param name="Interval">The interval of the mean.</param>
/// <param name="Next">The interval in which one more number is expected: mean give or take t s times the root of 1 + 1/n.</param>
/// <param name="PValue">Two-sided, against a mean of zero.</param>
/// <remarks>Ref. Student (1908), Biometrika 6, 1.</remarks>
public sealed record MeanTest(int Count, double Mean, double Deviation, Interval Interval, Interval Next, double PValue)
{
    /// <summary>The standard error of the mean.</summary>
    public double StandardError => Deviation / Math.Sqrt(Count);

    /// <summary>Tests the mean.</summary>
    /// <param name="values">Two numbers or more.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Fewer than two numbers.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the level lies outside.</exception>
    public static MeanTest Of(IReadOnlyList<double> values, double level = 0.95)
    {
        var (mean, deviation) = Sample.Of(values);
        var n = values.Count;
        var t = Student.Quantile((1 + Guard.OpenShare(level)) / 2, n - 1);
        double error = deviation / Math.Sqrt(n), half = t * error, next = t * deviation * Math.Sqrt(1 + (1.0 / n));
        var p = error > 0 ? Student.TwoSided(mean / error, n - 1) : mean == 0 ? 1 : 0;
        return new(n, mean, deviation, new(mean - half, mean + half, level), new(mean - next, mean + next, level), p);
    }
}
