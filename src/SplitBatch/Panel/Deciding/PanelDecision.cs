using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Deciding;

/// <summary>What a panel's count says by the rules that were declared: the one place where it is decided.</summary>
/// <remarks>
/// In this order: a count far below chance raises an alarm and ends everything else; the declared ballots are counted, and it is asked
/// whether other ballots would have said otherwise; looks before the end have their own rules; people are counted, not sets; then the
/// difference; then the margin, from both sides where the task has a direction; and nothing is ruled out by a panel that did not tell its
/// control.
/// </remarks>
/// <param name="Protocol">The protocol.</param>
/// <param name="Alarm">The look at a count far below chance; null where the protocol has no known guessing chance.</param>
/// <param name="Difference">Is a difference shown?</param>
/// <param name="Margin">Is a difference as large as the margin ruled out?</param>
public sealed record PanelDecision(Protocol Protocol, LowCountAlarm? Alarm, DifferenceDecision Difference, MarginDecision Margin)
{
    /// <summary>How the verdict hangs on ballots that are missing or were counted otherwise; null where that was not asked.</summary>
    public BallotSensitivity? Ballots { get; init; }

    /// <summary>The answer.</summary>
    public PanelAnswer Answer => Alarm is { IsRaised: true }
        ? PanelAnswer.Alarm
        : PanelReading.AnswerOf(Difference.Shown, Margin.RuledOut);

    /// <summary>Decides a panel whose protocol has a known guessing chance.</summary>
    /// <param name="rules">What was declared before pouring.</param>
    /// <param name="result">What the ballots came to.</param>
    /// <example>
    /// <code>
    /// PanelDecision.Of(new PanelRules(Protocol.Triangle, DeclaredMargin.OfShare(0.30)), PanelResult.Of(tasters: 60, right: 20))
    /// </code>
    /// </example>
    public static PanelDecision Of(PanelRules rules, PanelResult result)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(result);
        var decided = Decide(rules, result);
        return decided with { Ballots = BallotSensitivity.Of(rules, result, decided.Answer) };
    }

    /// <summary>Decides a panel of A/not-A or same/different: a difference can be shown, and no margin can be ruled out.</summary>
    /// <param name="test">The test of the answers to the two kinds of cup.</param>
    public static PanelDecision Of(YesNoTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var why = test.DifferenceShown ? Obstacles.None
            : !ExactBinomial.Reaches(FisherExact.UpperTail(test.Different, test.Different, 0, test.Alike), test.Alpha)
                ? Obstacles.Size
                : Obstacles.Count;
        return new(test.Protocol, null, new(test.DifferenceShown, DecisionBasis.TwoKinds, test.PValue, test.Alpha, null, why),
            MarginDecision.NotAskable);
    }

    /// <summary>The decision without the question of other ballots.</summary>
    internal static PanelDecision Decide(PanelRules rules, PanelResult result)
    {
        var alarm = LowCountAlarm.Of(rules.Protocol, result.Sets, result.Right, rules.AlarmLevel);
        return new(rules.Protocol, alarm, DifferenceDecision.Of(rules, result), MarginDecision.Of(rules, result, alarm.IsRaised));
    }
}
