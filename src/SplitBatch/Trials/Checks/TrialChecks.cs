namespace SplitBatch.Trials.Checks;

/// <summary>Every check, in the order in which a trial goes: plan, hops, brewing day, lab, files.</summary>
internal static class TrialChecks
{
    private static readonly ITrialCheck[] All =
    [
        new PlanNotSealed(), new PlanDiffersFromSeal(), new PlanHistoryTold(), new EndedOtherwise(), new PanelTooSmall(),
        new PanelLacksPower(), new AllergensNotNamed(),
        new DoubtfulBallots(),
        new OldAssay(), new CropYearsApart(), new ChargesOfOneHalf(),
        new HalvesApart(),
        new NoPrecision(), new OneHalfMeasured(), new SampleNotInKey(), new DoubtfulReading(),
        new MisspeltColumn(), new StrayFile(),
    ];

    /// <summary>All warnings about a trial.</summary>
    public static IReadOnlyList<Fault> Warnings(TrialFacts facts) => [.. All.SelectMany(check => check.Find(facts))];
}

/// <summary>
/// One thing that is legal in a trial folder and yet dubious. A check only warns: what cannot be used is a fault of the reader.
/// </summary>
internal interface ITrialCheck
{
    /// <summary>A warning for each place where it is so.</summary>
    IEnumerable<Fault> Find(TrialFacts facts);
}
