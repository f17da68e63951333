using SplitBatch.Numbers;

namespace SplitBatch.Lab;

/// <summary>Both halves measured in every run: what runs do to both drops out of the difference.</summary>
/// <param name="Differences">First half less second, run by run, in the analyte's unit.</param>
/// <param name="Mean">Their mean with its interval, t with one degree of freedom less than there are runs.</param>
public sealed record PairedRuns(IReadOnlyList<double> Differences, MeanTest Mean)
{
    /// <summary>Compares two halves over runs.</summary>
    /// <param name="a">The first half's result (or mean) in each run, two runs or more.</param>
    /// <param name="b">The second half's in the same runs and order, from as many results each.</param>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Fewer than two runs, or not the same number for both.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A result is not finite, or the level lies outside.</exception>
    public static PairedRuns Of(IReadOnlyList<double> a, IReadOnlyList<double> b, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        if (a.Count != b.Count) throw new ArgumentException("Both halves must have a result in every run.", nameof(b));
        double[] differences = [.. a.Zip(b, (x, y) => x - y)];
        return new(differences, MeanTest.Of(differences, level));
    }
}
