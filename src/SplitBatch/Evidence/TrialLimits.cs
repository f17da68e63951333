using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence;

/// <summary>What limits a trial as a whole, and what its panels say together.</summary>
internal static class TrialLimits
{
    public static IEnumerable<Finding> Together(TrialEvidence evidence)
    {
        if (Combined(evidence) is not { Count: > 0 } combined) yield break;
        if (evidence.TogetherByPeople is { } people)
        {
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
            Sources = [.. together.Panels.SelectMany(panel => new[] { $"ballots-{panel.Name}.csv", $"serving-{panel.Name}.csv" }),
                "trial.json"],
        };
    }

    /// <summary>The panels that are read together; none where one of them raises the alarm.</summary>
    private static List<CountedPanel> Combined(TrialEvidence evidence) =>
        evidence.Panels.Any(panel => panel.Answer == PanelAnswer.Alarm) ? []
        : evidence.Together is { } together ? [.. evidence.Panels.Where(panel => together.Panels.Any(one => one.Name == panel.Plan.Name))]
        : evidence.TogetherByPeople is null ? []
        : [.. evidence.Panels
            .Where(panel => panel is { Plan.Protocol: { Sides: 1, HasKnownChance: true }, Sequential: null, Repeats: null })];

    private static ReadTogether ReadTogether(IReadOnlyList<CountedPanel> panels, List<CountedPanel> combined) =>
        combined.Count == 0 ? Findings.ReadTogether.None
        : combined.Count == panels.Count ? Findings.ReadTogether.All
        : combined.Contains(panels[0]) ? Findings.ReadTogether.SomeWithMain
        : Findings.ReadTogether.SomeWithoutMain;

    /// <summary>How often a panel of guessers shows a difference at most: its alpha, or the true rate of a sequential plan.</summary>
    private static double FalselyShown(CountedPanel panel) =>
        panel.Sequential is { Plan: var plan } ? plan.At(plan.None).Different : panel.Plan.Alpha;

    public static IEnumerable<Finding> Opening(TrialEvidence evidence)
    {
        if (evidence.Invented) yield return new StandingLimit(Subject.Trial, StandingLimitKind.Invented, "invented")
        {
            Method = "said in trial.json",
            Sources = ["trial.json"],
        };
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
                Together = ReadTogether(evidence.Panels, Combined(evidence)),
                OneFalseAtLeast = Math.Min(1, evidence.Panels.Sum(FalselyShown)),
                Method = "order of the panels in trial.json; the sum of their chances of a false difference", Sources = ["trial.json"],
            };
        }

        if (evidence.Panels.Count > 0) yield return new StandingLimit(Subject.Panels, StandingLimitKind.PeopleLikeThese, "people");
    }
}
