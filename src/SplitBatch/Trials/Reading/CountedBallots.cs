using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// The ballots that a sealed plan counts: those that were in before the close, and no more sets than were sealed, in the order in which
/// they came in. A plan that nobody sealed counts what there is.
/// </summary>
/// <param name="Panel">The count.</param>
/// <param name="Extra">Sets beyond the sealed number, which are kept and not counted.</param>
/// <param name="Late">Ballots that came in after the close, which are kept and not counted.</param>
internal sealed record CountedBallots(ScoredPanel Panel, int Extra, int Late)
{
    /// <summary>Counts a panel's ballots.</summary>
    public static CountedBallots Of(ServingPlan key, IReadOnlyList<Ballot> ballots, PanelPlan plan, PlanCustody custody)
    {
        if (!custody.IsSealed) return new(key.Score(ballots, plan.Rules), 0, 0);
        IReadOnlyList<Ballot> inTime = custody.BallotsAtClose is { } closed ? [.. ballots.Take(closed)] : ballots;
        var late = ballots.Count - inTime.Count;
        var all = key.Score(inTime, plan.Rules);
        if (plan.Stopping != StoppingRule.Fixed || key.Sets.Count <= plan.Sets) return new(all, 0, late);
        var came = all.Ballots.Where(ballot => ballot.Set is not null).OrderBy(ballot => ballot.Ballot.When ?? DateTimeOffset.MaxValue)
            .Select(ballot => ballot.Set!.Number).Distinct().ToList();
        var wanted = came.Concat(key.Sets.Select(set => set.Number)).Distinct().Take(plan.Sets).ToHashSet();
        var kept = all.Ballots.Where(ballot => ballot.Set is null || wanted.Contains(ballot.Set.Number)).Select(ballot => ballot.Ballot);
        return new(key.Only(set => wanted.Contains(set.Number)).Score(kept, plan.Rules), Math.Max(0, came.Count - plan.Sets), late);
    }
}
