using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel;

namespace SplitBatch.Evidence;

/// <summary>Puts the headline together from findings made before: the answer, the count, the largest confound.</summary>
internal static class HeadlineFinding
{
    public static TrialHeadline Of(TrialEvidence evidence, CountedPanel? main, TrialFindings findings)
    {
        var about = main is null ? null : Subject.Panel(main.Plan.Name);
        var departed = findings.OfType<DepartedFromPlan>().Where(one => one.About == about).ToList();
        var answer = AnswerOf(main);
        var count = about is null ? null
            : findings.ResultsAbout(about).OfType<PanelFinding>().FirstOrDefault(finding => finding is SetsCounted or KindsCounted);
        var largest = answer is HeadlineAnswer.NoPanel or HeadlineAnswer.UnderWay or HeadlineAnswer.BelowChance
            ? null
            : Confounds.Of(findings, about).FirstOrDefault();
        return new()
        {
            NameA = evidence.NameA,
            NameB = evidence.NameB,
            Answer = answer,
            IsLead = main is { KeptToPlan: false } && answer is not HeadlineAnswer.BelowChance,
            Departures = [.. departed.Where(one => one.Departure is { Severity: Severity.Error, IsOfASealedPlan: true })],
            Fewer = departed.FirstOrDefault(one => one.Departure.Kind == DepartureKind.FewerBallots),
            AsChanged = evidence.Changed is { Panels.Count: > 0 } changed ? Verdict.Of(changed).HeadlineFound : null,
            Count = count,
            Margin = about is null ? null : findings.First<MarginTested>(about),
            Plan = main?.Planned,
            Sequential = about is null ? null : findings.First<SequentialDecided>(about),
            Largest = largest,
            Method = "put together from the findings of the trial",
            Sources = [.. (count?.Sources ?? []).Concat(largest?.Finding.Sources ?? []).Distinct()],
        };
    }

    private static HeadlineAnswer AnswerOf(CountedPanel? main) => main switch
    {
        null => HeadlineAnswer.NoPanel,
        { Answer: PanelAnswer.Alarm } => HeadlineAnswer.BelowChance,
        { IsUnderWay: true } => HeadlineAnswer.UnderWay,
        { Plan.AsksPreference: true, Answer: PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin } =>
            HeadlineAnswer.PreferenceShown,
        { Plan.AsksPreference: true } => HeadlineAnswer.NoPreferenceShown,
        { Answer: PanelAnswer.DifferenceShown } => HeadlineAnswer.Shown,
        { Answer: PanelAnswer.DifferenceWithinMargin } => HeadlineAnswer.ShownWithinMargin,
        { Answer: PanelAnswer.MarginRuledOut } => HeadlineAnswer.RuledOut,
        _ => HeadlineAnswer.Open,
    };
}
