namespace SplitBatch.Trials.Checks;

/// <summary>Every check, in the order in which a trial goes: plan, hops, brewing day, lab, files.</summary>
internal static class TrialChecks
{
    private static readonly ITrialCheck[] All =
    [
        new PlanNotDeclared(), new PanelTooSmall(), new PanelLacksPower(), new AllergensNotNamed(), new DoubtfulBallots(),
        new OldAssay(), new CropYearsApart(), new ChargesOfOneHalf(),
        new HalvesApart(),
        new NoPrecision(), new OneHalfMeasured(), new SampleNotInKey(), new DoubtfulReading(),
        new MisspeltColumn(), new StrayFile(),
    ];

    /// <summary>All warnings about a trial.</summary>
    public static IReadOnlyList<Fault> Warnings(TrialFacts facts) => [.. All.SelectMany(check => check.Find(facts))];
}
