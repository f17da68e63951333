using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace SplitBatch.Lab;

/// <summary>
/// Critical differences at 95 % probability: how far apart two means may lie when the beers are the same.
/// </summary>
/// <remarks>
/// Ref. ISO 5725-6 (1994), Accuracy of measurement methods and results, part 6: Use in practice of accuracy values, 4.1 and 4.2.
/// r is the repeatability limit, R the reproducibility limit, both in the analyte's unit.
/// </remarks>
public static class CriticalDifference
{
    /// <summary>Two means from one laboratory in one run: r times the root of (1/(2 n1) + 1/(2 n2)).</summary>
    /// <param name="repeatabilityLimit">r, above zero.</param>
    /// <param name="countA">Replicates in the first mean, 1 or more.</param>
    /// <param name="countB">Replicates in the second mean, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static double OneLaboratory(double repeatabilityLimit, int countA, int countB) =>
        Guard.Positive(repeatabilityLimit) * Math.Sqrt(1 / (2.0 * Count(countA)) + 1 / (2.0 * Count(countB)));

    /// <summary>Two means from two laboratories: the root of R² - r² (1 - 1/(2 n1) - 1/(2 n2)).</summary>
    /// <param name="repeatabilityLimit">r, zero or more (zero gives the widest answer, R itself) and at most R.</param>
    /// <param name="reproducibilityLimit">R, above zero.</param>
    /// <param name="countA">Replicates in the first mean, 1 or more.</param>
    /// <param name="countB">Replicates in the second mean, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside, or r is above R.</exception>
    public static double TwoLaboratories(double repeatabilityLimit, double reproducibilityLimit, int countA, int countB)
    {
        CheckPair(repeatabilityLimit, reproducibilityLimit);
        return Math.Sqrt(Square(reproducibilityLimit)
            - Square(repeatabilityLimit) * (1 - 1 / (2.0 * Count(countA)) - 1 / (2.0 * Count(countB))));
    }

    /// <summary>One laboratory's mean against a reference value: the root of (R² - r² (n - 1)/n), divided by the root of 2.</summary>
    /// <param name="repeatabilityLimit">r, zero or more and at most R.</param>
    /// <param name="reproducibilityLimit">R, above zero.</param>
    /// <param name="count">Replicates in the mean, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside, or r is above R.</exception>
    public static double AgainstReference(double repeatabilityLimit, double reproducibilityLimit, int count)
    {
        CheckPair(repeatabilityLimit, reproducibilityLimit);
        return Math.Sqrt(Square(reproducibilityLimit) - Square(repeatabilityLimit) * (Count(count) - 1.0) / count) / Math.Sqrt(2);
    }

    /// <summary>
    /// The critical range of n results of one run, in repeatability standard deviations: the 95 % point of the range of n
    /// standard normal values. ISO 5725-6 table 1 prints it to one decimal (2.8, 3.3, 3.6, 3.9, 4.0 for n = 2 to 6).
    /// </summary>
    /// <param name="count">Results, in [2, 100].</param>
    /// <exception cref="ArgumentOutOfRangeException">The count lies outside.</exception>
    public static double RangeFactor(int count)
    {
        Guard.InRange(count, 2, 100);
        double low = 0, high = 10;
        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            if (RangeCdf(middle, count) < 0.95) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private static double RangeCdf(double width, int count) => count * GaussLegendreRule.Integrate(
        x => Normal.PDF(0, 1, x) * Math.Pow(Normal.CDF(0, 1, x + width) - Normal.CDF(0, 1, x), count - 1), -9, 9, 256);

    private static void CheckPair(double repeatabilityLimit, double reproducibilityLimit)
    {
        Guard.Positive(reproducibilityLimit);
        Guard.InRange(repeatabilityLimit, 0, reproducibilityLimit);
    }

    private static int Count(int count) => Guard.InRange(count, 1, 1_000_000);

    private static double Square(double x) => x * x;
}
