using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using SplitBatch.Numbers;

namespace SplitBatch.Lab;

/// <summary>Can a margin be met at all, and how likely is it to be? To be asked before measuring.</summary>
/// <remarks>
/// Ref. as for <see cref="LabEquivalence"/>; the power with an estimated standard deviation is the known one averaged over the chi
/// distribution.
/// </remarks>
public static class EquivalencePlan
{
    /// <summary>The smallest margin that equal means could meet: 1.645 standard errors, or t of them.</summary>
    /// <param name="repeatability">Standard deviation within a run, above zero.</param>
    /// <param name="countA">Results in the first mean, at least 1.</param>
    /// <param name="countB">Results in the second mean, at least 1.</param>
    /// <param name="freedom">Degrees of freedom of the standard deviation, at least 1; null where it is known.</param>
    /// <param name="alpha">The chance of calling halves equivalent that differ by the margin, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double SmallestMargin(double repeatability, int countA, int countB, int? freedom = null, double alpha = 0.05) =>
        Student.Quantile(1 - LabEquivalence.Level(alpha), Freedom(freedom)) * RunDifference.StandardError(repeatability, countA, countB);

    /// <summary>The chance that halves are found to lie within the margin.</summary>
    /// <param name="repeatability">Standard deviation within a run, above zero.</param>
    /// <param name="countA">Results in the first mean, at least 1.</param>
    /// <param name="countB">Results in the second mean, at least 1.</param>
    /// <param name="margin">The difference that would matter, above zero.</param>
    /// <param name="difference">The true difference; at the margin the result is the true error.</param>
    /// <param name="freedom">Degrees of freedom of the standard deviation, at least 1; null where it is known.</param>
    /// <param name="alpha">The chance of calling halves equivalent that differ by the margin, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double Power(
        double repeatability, int countA, int countB, double margin, double difference = 0, int? freedom = null, double alpha = 0.05)
    {
        Guard.Positive(margin);
        var error = RunDifference.StandardError(repeatability, countA, countB);
        var bound = Student.Quantile(1 - LabEquivalence.Level(alpha), Freedom(freedom));
        if (freedom is not { } df) return Given(1);
        // Over q, the share of estimates below: chi-square's quantile gives the estimate as a multiple of the truth.
        return GaussLegendreRule.Integrate(q => Given(Math.Sqrt(ChiSquared.InvCDF(df, q) / df)), 0, 1, 256);

        double Given(double scale)
        {
            var room = margin - (bound * scale * error);
            return room <= 0 ? 0 : Normal.CDF(0, 1, (room - difference) / error) - Normal.CDF(0, 1, (-room - difference) / error);
        }
    }

    private static double Freedom(int? freedom) => freedom is { } df ? Guard.Positive(df, nameof(freedom)) : double.PositiveInfinity;
}
