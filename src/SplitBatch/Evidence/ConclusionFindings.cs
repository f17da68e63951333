using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence;

/// <summary>What follows from the results: over-readings to be warned of, and next steps.</summary>
internal static class ConclusionFindings
{
    public static IEnumerable<Finding> NotShown(TrialEvidence evidence, CountedPanel? main)
    {
        var about = main is null ? Subject.Panels : Subject.Panel(main.Plan.Name);
        foreach (var (kind, word) in OfPanel(main)) yield return new OverReading(about, kind, word);
        if (evidence.Bitterness?.Judgement == Judgement.Exceeds)
            yield return new OverReading(Subject.Lab, OverReadingKind.MeasuredIsTasted, "tasted");
        if (evidence.Bitterness?.Judgement == Judgement.Within)
            yield return new OverReading(Subject.Lab, OverReadingKind.WithinScatterIsEqual, "equal");
        yield return new OverReading(Subject.Trial, OverReadingKind.Elsewhere, "elsewhere");
    }

    public static IEnumerable<Finding> Next(TrialEvidence evidence, CountedPanel? main)
    {
        var about = main is null ? Subject.Panels : Subject.Panel(main.Plan.Name);
        foreach (var step in AfterPanel(about, main)) yield return step;
        if (evidence.Bitterness is null) yield return new NextStep(Subject.Lab, NextStepKind.SendToLab, "lab");
        else if (evidence.Bitterness.Circumstance is LabCircumstance.OtherMethods
            || evidence.Bitterness is { Judgement: Judgement.NotJudged, Circumstance: LabCircumstance.SeparateRuns })
                yield return new NextStep(Subject.Lab, NextStepKind.SendToLab, "lab");
        else if (evidence.Bitterness.Judgement is Judgement.DependsOnReading or Judgement.NotJudged)
            yield return new NextStep(Subject.Lab, NextStepKind.AskPrecision, "precision");
        else if (evidence is { Bitterness.Judgement: Judgement.Exceeds, Doses: not null }
            && !evidence.IsTheVariable(Analyte.Bitterness.Name))
                yield return new NextStep(Subject.Lab, NextStepKind.CorrectDoses, "doses");
    }

    private static (OverReadingKind Kind, string Word)[] OfPanel(CountedPanel? main) => main switch
    {
        null => [(OverReadingKind.Taste, "taste")],
        { Answer: PanelAnswer.Alarm } => [(OverReadingKind.BelowChance, "below-chance")],
        { Plan.AsksPreference: true } when IsShown(main) => [(OverReadingKind.EverybodyPrefers, "everybody")],
        { Plan.AsksPreference: true } => [(OverReadingKind.PreferenceIsNoTest, "preference"), (OverReadingKind.Belief, "belief")],
        _ when IsShown(main) => [(OverReadingKind.Everybody, "everybody"), (OverReadingKind.Liking, "liking")],
        { Answer: PanelAnswer.MarginRuledOut } => [(OverReadingKind.SameBelowMargin, "same")],
        _ => [(OverReadingKind.SameThoughOpen, "same"), (OverReadingKind.Belief, "belief")],
    };

    private static bool IsShown(CountedPanel panel) => panel.Answer is PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin;

    private static IEnumerable<Finding> AfterPanel(Subject about, CountedPanel? main)
    {
        switch (main)
        {
            case null:
                yield return new NextStep(about, NextStepKind.ServePanel, "serve");
                break;
            case { Answer: PanelAnswer.Alarm }:
                yield return new NextStep(about, NextStepKind.FindTheFault, "fault");
                break;
            case { IsUnderWay: true }:
                yield return new NextStep(about, NextStepKind.ServeNextTaster, "panel");
                break;
            case { Answer: PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin }:
                yield return new NextStep(about, NextStepKind.BrewAgain, "repeat");
                if (!main.Plan.AsksPreference) yield return new NextStep(about, NextStepKind.AskWhat, "ask");
                break;
            case { Plan.AsksPreference: true }:
                yield return new NextStep(about, NextStepKind.TestTelling, "panel");
                break;
            case { Answer: PanelAnswer.MarginRuledOut }:
                yield return new NextStep(about, NextStepKind.LargerChange, "larger");
                break;
            case { YesNo: { } }:
                yield return new NextStep(about, NextStepKind.OtherProtocol, "panel");
                break;
            default:
                yield return new NextStep(about, NextStepKind.LargerPanel, "panel")
                {
                    Tasters = PanelFindings.SizeThatSettles(main, main.Planned) ?? 0, Sources = ["trial.json"],
                    Method = "exact binomial: from this size on no count leaves both questions open without raising the alarm",
                };
                break;
        }
    }
}
