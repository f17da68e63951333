using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence;

/// <summary>What was found of one panel, in the order in which a reader meets it.</summary>
internal static class PanelFindings
{
    /// <summary>
    /// The results. A count far below chance allows nothing beside itself: what was asked beside is decoded by the same key.
    /// </summary>
    public static IEnumerable<Finding> Results(CountedPanel panel)
    {
        var plan = panel.Planned;
        yield return Count(panel, plan);
        if (panel.Answer == PanelAnswer.Alarm)
        {
            yield return Alarm(panel, plan);
            yield break;
        }

        foreach (var finding in panel switch
        {
            { Sequential: { } path } => [OfPath(panel, plan, path)],
            { YesNo: { } } => [Difference(panel, plan)],
            { Plan.AsksPreference: true } => [.. Repeats(panel, plan), Difference(panel, plan)],
            _ => OfCount(panel, plan),
        }) yield return finding;
        if (panel.Control is { } control)
            yield return new ControlTasted(plan, control) { Method = "exact binomial test against guessing", Sources = panel.Sources };
        foreach (var finding in QuestionFindings.Of(panel, plan)) yield return finding;
    }

    /// <summary>What limits them.</summary>
    public static IEnumerable<Finding> Limits(CountedPanel panel)
    {
        var plan = panel.Planned;
        foreach (var departed in Departures(panel)) yield return departed;
        if (panel.Standing != PlanStanding.Sealed)
            yield return new PlanUnsealed(plan)
            {
                Method = "no seal from before the first ballot is in the folder",
                Sources = ["trial.json"],
            };
        foreach (var (i, check) in Biases(panel).Index())
        {
            yield return new BiasShown(plan, i + 1, check)
            {
                Method = "chi-square by random dealing, corrected by Holm's method",
                Sources = panel.Sources,
            };
        }

        foreach (var (i, remark) in panel.Remarks.Index())
        {
            yield return new CountRemarked(plan, i + 1, remark) { Method = "count of ballots", Sources = panel.Sources };
        }

        if (panel.Answer == PanelAnswer.Alarm) yield break;
        if (panel.Decision.Ballots is { } ballots && ballots is not { Missing: 0, ByOtherRules.Count: 0 } && panel.Sequential is null)
        {
            yield return new BallotsWeighed(plan, ballots)
            {
                Method = "every number of right answers among the missing ballots, and every other rule of counting",
                Sources = panel.Sources,
            };
        }

        if (panel.Ratings is { Questions: > 1 } asked)
            yield return new QuestionsWeighed(plan, asked.Questions) { Method = "Holm's method", Sources = panel.Sources };
        foreach (var unknown in Unrecorded(panel, plan)) yield return unknown;
    }

    /// <summary>Where practice left the plan.</summary>
    public static IEnumerable<DepartedFromPlan> Departures(CountedPanel panel) => panel.Departures.Select((departure, i) =>
        new DepartedFromPlan(panel.Planned, i + 1, departure)
        {
            Method = "plan against practice",
            Sources = [.. panel.Sources, "trial.json"],
        });

    private static IEnumerable<BiasCheck> Biases(CountedPanel panel) =>
        panel.Answer == PanelAnswer.Alarm ? [] : panel.Bias?.Checks.Where(check => check.BiasShown) ?? [];

    private static IEnumerable<Finding> Unrecorded(CountedPanel panel, CountedPlan plan)
    {
        if (panel.Control is null && !plan.AsksPreference
            && panel.Answer is PanelAnswer.MarginRuledOut or PanelAnswer.DifferenceWithinMargin or PanelAnswer.Inconclusive)
        {
            yield return new NotRecorded(plan, NotRecordedKind.Control, "control") { Sources = panel.Sources };
        }

        if (plan.Protocol.HasKnownChance && panel is { Sequential: null, Repeats: null, Standing: not PlanStanding.Sealed }
            && panel.Sets is > 1 and <= MostLooks && panel.Decision.Difference.Basis == DecisionBasis.Count
            && EarlyLooks.At(plan.Protocol, plan.Alpha, [.. Enumerable.Range(1, panel.Sets)]) is { } looks && looks.TrueAlpha > plan.Alpha)
        {
            yield return new NotRecorded(plan, NotRecordedKind.Looks, "looks")
            {
                PossibleLooks = panel.Sets,
                FalselyShownByLooking = looks.TrueAlpha,
                Method = "exact dynamic programming over counts",
                Sources = ["trial.json"],
            };
        }
    }

    /// <summary>Above so many sets nobody would look after each; the exact chance takes long.</summary>
    private const int MostLooks = 400;

    private static PanelFinding Count(CountedPanel panel, CountedPlan plan) => panel.YesNo is { } test
        ? new KindsCounted(plan)
        {
            Different = test.Different, Hits = test.Hits, Alike = test.Alike, FalseAlarms = test.FalseAlarms,
            Method = "count of ballots scored against the sealed key", Sources = panel.Sources,
        }
        : new SetsCounted(plan)
        {
            People = panel.People, Sets = panel.Sets, Right = panel.Right, OneAfterAnother = panel.Sequential is not null,
            Sources = panel.Sources,
            Method = panel.Sequential is null
                ? "count of ballots scored against the sealed key"
                : "ballots scored against the sealed key, in the order in which they came in",
        };

    private static CountBelowChance Alarm(CountedPanel panel, CountedPlan plan)
    {
        var low = panel.LowTail;
        return new(plan)
        {
            LowTail = low, EitherWay = Math.Min(1, 2 * low), Sources = panel.Sources,
            Method = panel.YesNo is null ? "exact binomial tail below guessing; twice the smaller tail for either way"
                : "Fisher's exact test the other way round; twice the smaller tail for either way",
        };
    }

    private static SequentialDecided OfPath(CountedPanel panel, CountedPlan plan, WaldPath path)
    {
        var (none, margin) = (path.Plan.At(path.Plan.None), path.Plan.At(path.Plan.Margin));
        return new(plan)
        {
            Decision = path.Decision, FalselyShown = none.Different, FalselyRuledOut = margin.Similar, TastersIfNone = none.Tasters,
            TastersAtMargin = margin.Tasters,
            Method = "Wald's sequential test; true rates by exact dynamic programming", Sources = [.. panel.Sources, "trial.json"],
        };
    }

    private static IEnumerable<Finding> OfCount(CountedPanel panel, CountedPlan plan)
    {
        string[] planned = [.. panel.Sources, "trial.json"];
        foreach (var repeats in Repeats(panel, plan)) yield return repeats;
        yield return Difference(panel, plan);
        var margin = panel.Decision.Margin;
        yield return new MarginTested(plan, margin)
        {
            People = panel.People, Sets = panel.Sets, Right = panel.Right, Sources = planned,
            Method = margin.Basis == DecisionBasis.People
                ? "exact convolution over people who can always tell or only guess, and the exact binomial"
                : margin.Basis == DecisionBasis.AnyTime
                    ? "likelihood mixed over shares below the margin, valid at any look"
                    : "exact one-sided binomial limit for the share of discriminators",
        };
        if (panel.Repeats is null)
        {
            yield return new LikelihoodWeighed(plan)
            {
                Ratio = CountLikelihood.AtMargin(plan.Protocol, panel.Sets, panel.Right, plan.DeclaredMargin),
                Method = "ratio of two binomial likelihoods", Sources = planned,
            };
        }

        if (panel.Bayes is { } bayes)
        {
            yield return new PriorWeighed(plan)
            {
                PriorA = bayes.PriorA, PriorB = bayes.PriorB, AboveMargin = bayes.ChanceAboveMargin,
                Method = "exact posterior of the share of discriminators from a beta prior", Sources = planned,
            };
        }

        if (panel.Answer == PanelAnswer.Inconclusive && SizeThatSettles(panel, plan) is { } tasters)
        {
            yield return new SizeToSettle(plan)
            {
                Tasters = tasters,
                Method = "exact binomial: from this size on no count leaves both questions open without raising the alarm",
                Sources = ["trial.json"],
            };
        }
    }

    /// <summary>
    /// The size from which on every count at or above guessing answers a question; null where a difference the other way round would
    /// still be open.
    /// </summary>
    internal static int? SizeThatSettles(CountedPanel panel, CountedPlan plan) =>
        Settling(panel, plan)?.Always is { } tasters
            && MarginCounts.RuledOut(plan.Protocol, tasters, plan.DeclaredMargin, plan.Beta) is not null ? tasters : null;

    private static TastersNeeded? Settling(CountedPanel panel, CountedPlan plan) => panel.Reading is not { } reading ? null
        : plan is { DeclaredMargin.IsDPrime: true, IsDirected: true }
            ? Power.TastersThatSettle(plan.Protocol, plan.Alpha, plan.DeclaredMargin, plan.Beta)
        : reading.ToSettle;

    private static IEnumerable<Finding> Repeats(CountedPanel panel, CountedPlan plan)
    {
        if (panel.Repeats is not { } repeats) yield break;
        yield return new RepeatsWeighed(plan)
        {
            Sets = repeats.Sets, People = repeats.Tasters, Sources = panel.Sources,
            Method = $"beta-binomial by maximum likelihood; overdispersion {(repeats.Corrected.PValue < 0.05 ? "shown" : "not shown")}, "
                + $"likelihood ratio against tasters who are all alike",
        };
    }

    private static DifferenceTested Difference(CountedPanel panel, CountedPlan plan)
    {
        var decision = panel.Decision.Difference;
        return new(plan, decision)
        {
            Sources = [.. panel.Sources, "trial.json"],
            Method = decision.Basis switch
            {
                DecisionBasis.TwoKinds => "Fisher's exact test, one-sided",
                DecisionBasis.People => "exact test of the sign of each taster's net leaning",
                DecisionBasis.AnyTime => "likelihood mixed over all shares against guessing, valid at any look",
                DecisionBasis.PlannedLooks => "exact binomial test at the level that the planned looks share",
                _ => plan.Protocol.Sides == 2 ? "exact two-sided binomial test against one half" : "exact binomial test against guessing",
            },
        };
    }
}
