using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence;

/// <summary>What limits a trial as a whole, and what its panels say together.</summary>
internal static class TrialLimits
{
    public static IEnumerable<Finding> Together(TrialEvidence evidence)
    {
        if (evidence.Panels.Any(panel => panel.Answer == PanelAnswer.Alarm)) yield break;
        if (evidence.TogetherByPeople is { } people)
        {
            var combined = evidence.Panels.Where(panel => panel is { Plan.Protocol: { Sides: 1, HasKnownChance: true }, Sequential: null, Repeats: null }).ToList();
            yield return new PeopleCombined(people, combined.DistinctBy(panel => panel.Plan.Protocol).Count() == 1)
            {
                Panels = combined.Count,
                Method = "exact test of the sum; Student's t over people joined with the exact independent interval",
                Sources = [.. combined.SelectMany(panel => panel.Sources), "trial.json"],
            };
        }

        if (evidence.Together is not { } together) yield break;
        yield return new PanelsCombined(together)
        {
            Method = StratifiedCombination.Method,
            Sources = [.. together.Panels.SelectMany(panel => new[] { $"ballots-{panel.Name}.csv", $"serving-{panel.Name}.csv" }), "trial.json"],
        };
    }

    public static IEnumerable<Finding> Opening(TrialEvidence evidence)
    {
        if (evidence.Invented) yield return new StandingLimit(Subject.Trial, StandingLimitKind.Invented, "invented") { Method = "said in trial.json", Sources = ["trial.json"] };
        yield return new StandingLimit(Subject.Trial, StandingLimitKind.OneBatchOfEach, "batches");
    }

    public static IEnumerable<Finding> Closing(TrialEvidence evidence)
    {
        if (evidence.Panels.Count == 0) yield return new StandingLimit(Subject.Panels, StandingLimitKind.NoPanel, "panel");
        if (evidence.Panels.Count > 1 || evidence is { Panels.Count: 1, NotCounted.Count: > 0 })
        {
            yield return new RestsOnOnePanel(evidence.Panels[0].Plan.Name, evidence.PassedOver)
            {
                BySeal = evidence.Panels[0].Standing == PlanStanding.Sealed,
                Counted = evidence.Panels.Count,
                AreCombined = evidence.Together is not null || evidence.TogetherByPeople is not null,
                OneFalseAtLeast = Math.Min(1, evidence.Panels.Sum(panel => panel.Plan.Alpha)),
                Method = "order of the panels in trial.json; the sum of their chances of a false difference", Sources = ["trial.json"],
            };
        }

        if (evidence.Panels.Count > 0) yield return new StandingLimit(Subject.Panels, StandingLimitKind.PeopleLikeThese, "people");
    }
}
