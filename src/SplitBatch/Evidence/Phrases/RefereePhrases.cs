using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence.Phrases;

/// <summary>
/// What a referee asks of a panel: ballots that might have counted otherwise, a control, looks, and the number of questions.
/// </summary>
internal static class RefereePhrases
{
    public static Sentence Of(ControlTasted finding)
    {
        var control = finding.Control;
        var count = Sentence.Of($"Of {Printed.Count(control.Sets, "control set")} with a known difference, "
            + $"{Wording.AnswersRight(control.Right)}");
        return control.Passed
            ? Sentence.Of($"{count}: this panel could tell the control.")
            : Sentence.Of($"{count}: this panel is not shown to tell the control, and so rules nothing out.");
    }

    public static Sentence Of(BallotsWeighed finding)
    {
        var (sensitivity, panel) = (finding.Sensitivity, new Name(finding.Plan.Panel));
        var missing = sensitivity.Missing == 0
            ? Sentence.Empty
            : Sentence.Of($"{Printed.Count(sensitivity.Missing, "set")} of panel {panel} {Wording.Were(sensitivity.Missing)} served and "
                + $"not answered; {Turned(finding)}");
        if (sensitivity.ByOtherRules.Count == 0) return missing;
        var turned = finding.TurnedByRules;
        return missing + (turned.Count == 0
            ? Sentence.Of($"Counting doubtful ballots of panel {panel} by other rules gives the same answer.")
            : Sentence.Join(
                turned.Select(
                    other => Sentence.Of($"With {new Name(other.Rule)}, panel {panel} would give another answer: "
                        + $"{Answers(finding, other.Answer)}."))));
    }

    public static Sentence Of(QuestionsWeighed finding) => Sentence.Of(
        $"Panel {new Name(finding.Plan.Panel)} was asked {Printed.Count(finding.Questions, "question")} beside the difference. Each by "
            + $"itself at {Printed.ChosenPercent(RatingCompared.Level)}, one at least would show something by chance in up to "
            + $"{Printed.Percent(finding.OneFalseUncorrected)} of such panels if they were independent; so their p-values are corrected "
            + $"for the number.");

    public static Sentence Of(NotRecorded finding) => finding.Kind == NotRecordedKind.Control
        ? Sentence.Of($"Panel {new Name(finding.Plan.Panel)} was served no control with a known difference, so nobody knows what it could "
            + $"have told.")
        : Sentence.Of($"It is not written down whether anybody saw the count of panel {new Name(finding.Plan.Panel)} before its end. "
            + $"Looking after each of {Printed.Count(finding.PossibleLooks, "ballot")} and stopping at the first "
            + $"{(finding.Plan.AsksPreference ? "majority" : "difference")} finds a false one in "
            + $"{Printed.Percent(finding.FalselyShownByLooking)} of panels.");

    /// <summary>Whether other answers of the missing would have turned the panel's answer, and which.</summary>
    private static Sentence Turned(BallotsWeighed finding)
    {
        var turned = finding.TurnedBy;
        if (turned.Count == 0) return Sentence.Of($"however those answers had turned out, the panel's answer would be the same.");
        var (none, all) = (finding.IfRight[0], finding.IfRight[^1]);
        var counted = finding.Counted;
        var (wrong, right) = finding.Plan.Protocol.Sides == 1
            ? ("wrong", "right")
            : finding.Plan.Expected == Side.B ? ("for half A", "for half B") : ("for half B", "for half A");
        var lowest = none == counted ? Sentence.Empty
            : Sentence.Of($"with all of those answers {wrong} it would be: {Answers(finding, none)}.");
        var highest = all == counted ? Sentence.Empty
            : Sentence.Of($"{(none == counted ? "with" : "With")} all of those answers {right} it would be: {Answers(finding, all)}.");
        var between = none == counted && all == counted
            ? Sentence.Of($"with {Printed.Count(turned[0])} of those answers {right} it would be: "
                + $"{Answers(finding, finding.IfRight[turned[0]])}.")
            : Sentence.Empty;
        return Sentence.Join(lowest, highest, between);
    }

    private static string Answers(BallotsWeighed finding, PanelAnswer answer) => answer switch
    {
        PanelAnswer.DifferenceShown when finding.Plan.AsksPreference => "a majority is shown",
        _ when finding.Plan.AsksPreference => "no majority is shown",
        PanelAnswer.DifferenceShown => "a difference is shown",
        PanelAnswer.DifferenceWithinMargin => "a difference is shown, and the margin ruled out",
        PanelAnswer.MarginRuledOut => "no difference is shown, and the margin is ruled out",
        PanelAnswer.Alarm => "the count lies far below what guessing gives",
        _ => "neither is a difference shown nor the margin ruled out",
    };
}
