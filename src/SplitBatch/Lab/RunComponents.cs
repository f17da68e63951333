namespace SplitBatch.Lab;

/// <summary>How results scatter within a run and from run to run, from one sample read equally often in several runs.</summary>
/// <param name="Repeatability">Standard deviation within a run, in the analyte's unit.</param>
/// <param name="BetweenRuns">Standard deviation from run to run; 0 where the runs scatter no more than readings within them.</param>
/// <param name="FreedomWithin">Degrees of freedom within runs.</param>
/// <param name="FreedomBetween">Degrees of freedom between runs.</param>
/// <remarks>
/// One-way analysis of variance with equal replicates: s_run^2 = (mean square between - mean square within)/n, not below 0.
/// Ref. ISO 5725-3 (1994; 2023), Intermediate measures of precision (scope read); the formula is the usual one.
/// </remarks>
public sealed record RunComponents(double Repeatability, double BetweenRuns, int FreedomWithin, int FreedomBetween)
{
    /// <summary>Intermediate precision: the standard deviation of single results in different runs.</summary>
    public double Intermediate => Math.Sqrt((Repeatability * Repeatability) + (BetweenRuns * BetweenRuns));

    /// <summary>Whether the spread from run to run is known at all. A 0 from few runs is not knowledge that runs agree.</summary>
    public bool KnowsRuns => BetweenRuns > 0;

    /// <summary>Splits the scatter of a sample.</summary>
    /// <param name="runs">The results of each run, in the analyte's unit: two runs or more, each with the same number of results, two or
    /// more.</param>
    /// <exception cref="ArgumentException">Fewer than two runs, fewer than two results, or numbers that differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A result is not a finite number.</exception>
    public static RunComponents Of(IReadOnlyList<IReadOnlyList<double>> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        if (runs.Count < 2) throw new ArgumentException("To tell how runs differ takes two runs or more.", nameof(runs));
        var n = runs[0].Count;
        if (n < 2)
            throw new ArgumentException("To tell how results scatter within a run takes two results or more in each.", nameof(runs));
        if (runs.Any(run => run.Count != n))
            throw new ArgumentException("The runs hold different numbers of results; this analysis takes the same number in each.",
                nameof(runs));
        foreach (var result in runs.SelectMany(run => run)) Guard.InRange(result, double.MinValue, double.MaxValue, nameof(runs));
        double[] means = [.. runs.Select(run => run.Average())];
        var mean = means.Average();
        var within = runs.Zip(means).Sum(run => run.First.Sum(x => (x - run.Second) * (x - run.Second))) / (runs.Count * (n - 1));
        var between = n * means.Sum(m => (m - mean) * (m - mean)) / (runs.Count - 1);
        return new(Math.Sqrt(within), Math.Sqrt(Math.Max(0, (between - within) / n)), runs.Count * (n - 1), runs.Count - 1);
    }

    /// <summary>For example <c>within a run 0.25, from run to run 0.53, together 0.59</c>.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"within a run {Printed.Statistic(Repeatability)}, from run to run ")
            + FormattableString.Invariant(
                $"{(KnowsRuns ? FormattableString.Invariant($"{Printed.Statistic(BetweenRuns)}") : "not known")}, together ")
                + FormattableString.Invariant($"{Printed.Statistic(Intermediate)}");
}
