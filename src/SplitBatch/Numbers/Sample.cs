namespace SplitBatch.Numbers;

/// <summary>Mean and standard deviation of a few numbers.</summary>
internal static class Sample
{
    /// <summary>The mean, and the standard deviation with divisor n - 1.</summary>
    /// <exception cref="ArgumentException">Fewer than two numbers.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static (double Mean, double Deviation) Of(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < 2) throw new ArgumentException("To tell how numbers scatter takes two or more.", nameof(values));
        foreach (var value in values) Guard.InRange(value, double.MinValue, double.MaxValue, nameof(values));
        var mean = values.Average();
        return (mean, Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1)));
    }
}
