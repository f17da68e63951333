using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Numbers;

namespace SplitBatch.Trials.Seals;

/// <summary>What became of one panel's plan between its seal and today.</summary>
/// <param name="InForce">The seal that decides: the last before the panel's first ballot; null where none was made in time.</param>
/// <param name="Amendments">What was changed on record before the first ballot.</param>
/// <param name="Changes">What was changed after it, on record or not.</param>
/// <param name="Pending">What trial.json says differently before the first ballot, so that it can still be amended or put back.</param>
/// <param name="Changed">The plan as it reads after all changes; null where the panel is gone from it.</param>
internal sealed record PanelHistory(
    Seal? InForce, IReadOnlyList<PlanChange> Amendments, IReadOnlyList<PlanChange> Changes, IReadOnlyList<PlanDifference> Pending,
    PanelPlan? Changed)
{
    /// <summary>Follows one panel through the seals up to what trial.json says now.</summary>
    /// <param name="chain">The seals.</param>
    /// <param name="panel">The panel's name.</param>
    /// <param name="ballots">The panel's ballots.</param>
    /// <param name="now">What trial.json says now.</param>
    public static PanelHistory Of(SealChain chain, string panel, IReadOnlyList<Ballot> ballots, TrialPlan now)
    {
        if (chain.Latest is not { } latest) return new(null, [], [], [], null);
        var first = ballots.Min(ballot => ballot.When);
        var inForce = chain.InForce(seal => seal.BallotsOf(panel) == 0 && !(first is { } time && seal.IsCertainlyLaterThan(time)));
        if (inForce?.Plan.Panel(panel) is null) return new(null, [], [], [], null);
        var open = PlanDifference.Between(latest.Plan, now).Where(difference => difference.Concerns(panel)).ToList();
        var (early, late) = (new List<PlanChange>(), new List<PlanChange>());
        foreach (var (old, amended) in chain.Steps)
        {
            var into = amended.Number <= inForce.Number ? early : late;
            into.AddRange(PlanDifference.Between(old.Plan, amended.Plan).Where(difference => difference.Concerns(panel))
                .Select(difference => ChangeOf(difference, amended)));
        }

        if (ballots.Count > 0) late.AddRange(open.Select(difference => ChangeOf(difference, null)));
        return new(inForce, early, late, ballots.Count > 0 ? [] : open, now.Panel(panel));
    }

    private static PlanChange ChangeOf(PlanDifference difference, Seal? seal) =>
        new(difference.Name, Shown(difference.Before), Shown(difference.After), seal?.At, seal?.Because);

    private static string Shown(string? value) => string.IsNullOrEmpty(value) ? "nothing" : value;
}
