using SplitBatch.Numbers;
using MathNet.Numerics.Distributions;

namespace SplitBatch.Lab;

/// <summary>
/// How far apart two means may lie when the beers are the same, by where and when they were measured. 95 % probability unless a level is
/// asked for.
/// </summary>
/// <remarks>
/// All standard deviations are in the analyte's unit. The factor is 1.959964; ISO 5725-6 rounds 1.96 times the root of 2 to 2.8, as
/// <see cref="CriticalDifference"/> does. Ref. ISO 5725-6 (1994) for one run; ISO 5725-3 (1994; 2023), scope read, for the part of the
/// run.
/// </remarks>
public static class RunDifference
{
    private static readonly double Factor = Normal.InvCDF(0, 1, 0.975);

    /// <summary>Both means from one run of one laboratory by one method.</summary>
    /// <param name="repeatability">Standard deviation within a run, above zero.</param>
    /// <param name="countA">Results in the first mean, at least 1.</param>
    /// <param name="countB">Results in the second mean, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double OneRun(double repeatability, int countA, int countB) => Factor * StandardError(repeatability, countA, countB);

    /// <summary>The two means from two runs of one laboratory by one method.</summary>
    /// <param name="repeatability">Standard deviation within a run, above zero.</param>
    /// <param name="betweenRuns">Standard deviation from run to run, zero or more; well known, not a 0 from a few runs.</param>
    /// <param name="countA">Results in the first mean, at least 1.</param>
    /// <param name="countB">Results in the second mean, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double SeparateRuns(double repeatability, double betweenRuns, int countA, int countB) =>
        Factor * StandardError(repeatability, countA, countB, betweenRuns);

    /// <summary>
    /// Two halves in separate runs, from the run means of a control sample that is read as often in each run as the halves are: exact,
    /// however the scatter divides.
    /// </summary>
    /// <param name="runMeans">The control's mean in each run, two runs or more.</param>
    /// <param name="level">Level, above 0 and below 1.</param>
    /// <returns>t(k - 1) times the root of 2 times the standard deviation of the run means.</returns>
    /// <exception cref="ArgumentException">Fewer than two runs.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside.</exception>
    public static double FromControl(IReadOnlyList<double> runMeans, double level = 0.95)
    {
        var (_, deviation) = Sample.Of(runMeans);
        return Student.Quantile((1 + Guard.OpenShare(level)) / 2, runMeans.Count - 1) * Math.Sqrt(2) * deviation;
    }

    /// <summary>
    /// What it costs to judge halves from separate runs by repeatability alone: the chance of a false difference at a nominal 5 %.
    /// </summary>
    /// <param name="ratio">Standard deviation from run to run over that within a run, zero or more.</param>
    /// <param name="count">Results in each mean, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double FalseDifference(double ratio, int count) =>
        2 * Normal.CDF(0, 1, -OneRun(1, count, count) / StandardError(1, count, count, ratio));

    /// <summary>The standard error of the difference of two means: the root of 2 s_run^2 + s_r^2 (1/n1 + 1/n2).</summary>
    internal static double StandardError(double repeatability, int countA, int countB, double betweenRuns = 0)
    {
        Guard.Positive(repeatability);
        Guard.NotNegative(betweenRuns);
        Guard.Positive(countA);
        Guard.Positive(countB);
        return Math.Sqrt((2 * betweenRuns * betweenRuns) + (repeatability * repeatability * ((1.0 / countA) + (1.0 / countB))));
    }
}
