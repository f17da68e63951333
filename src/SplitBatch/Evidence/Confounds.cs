using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>Everything besides the variable that could explain what a panel found, the heaviest first.</summary>
/// <remarks>
/// A measured gap in what is tasted comes before an inequality that the log shows, a serious departure, a bias, an unlike lot and a
/// quantity that nobody measured. Gaps and inequalities are ordered by how many times they exceed what method or instrument tells apart;
/// an inequality that nobody can judge comes after those that exceed it.
/// </remarks>
internal static class Confounds
{
    public static IEnumerable<Confound> Of(TrialFindings findings, Subject? panel) => findings
        .Select(finding => Weighed(finding, panel)).OfType<Confound>()
        .OrderBy(confound => confound.Kind).ThenByDescending(confound => confound.Size);

    private static Confound? Weighed(Finding finding, Subject? panel) => finding switch
    {
        LabDifference { IsTheVariable: false, Outcome: LabOutcome.Apart or LabOutcome.ApartHoweverRead } lab =>
            new(ConfoundKind.MeasuredGap, Gap(lab.Comparison), lab),
        AnalyteApart other => new(ConfoundKind.MeasuredGap, Gap(other.Comparison), other),
        HalvesDiffer { Line: var line } =>
            new(ConfoundKind.LoggedInequality,
                line is { Difference: { } apart, Tolerance: > 0 and var most } ? Math.Abs(apart) / most : 0, finding),
        DepartedFromPlan { Departure.Severity: Severity.Error } departed when departed.About == panel =>
            new(ConfoundKind.SeriousDeparture, 0, departed),
        BiasShown bias when bias.About == panel => new(ConfoundKind.Bias, 0, bias),
        HopLotsDiffer lots => new(ConfoundKind.HopLots, 0, lots),
        NotMeasured gaps => new(ConfoundKind.NotMeasured, 0, gaps),
        StandingLimit { Kind: StandingLimitKind.NoBatchLog } none => new(ConfoundKind.NotMeasured, 1, none),
        _ => null,
    };

    /// <summary>The measured difference over the largest difference that the method would show on one beer.</summary>
    private static double Gap(LabComparison comparison) =>
        Math.Abs(comparison.Difference) / (comparison.CriticalDifference
            ?? comparison.Readings.Max(reading => reading.CriticalDifference)) ?? 1;
}
