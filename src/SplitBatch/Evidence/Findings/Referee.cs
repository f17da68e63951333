using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence.Findings;

/// <summary>Whether the panel told a control set with a known difference.</summary>
public sealed record ControlTasted : PanelFinding
{
    internal ControlTasted(CountedPlan plan, KnownControl control)
        : base(plan, "control") => Control = control;

    /// <summary>The control's count.</summary>
    public KnownControl Control { get; }
}

/// <summary>
/// Whether the panel's answer would be another if missing ballots had come in, or if late, double or excluded ones had counted otherwise.
/// </summary>
public sealed record BallotsWeighed : PanelLimit
{
    internal BallotsWeighed(CountedPlan plan, BallotSensitivity sensitivity)
        : base(plan, "ballots") => Sensitivity = sensitivity;

    /// <summary>The answers that other ballots would have given.</summary>
    public BallotSensitivity Sensitivity { get; }

    /// <summary>The answer of the declared count.</summary>
    public PanelAnswer Counted => Asked(Sensitivity.Counted);

    /// <summary>The answer if none, one, two ... all of the missing answers had been right.</summary>
    public IReadOnlyList<PanelAnswer> IfRight => [.. Sensitivity.IfRight.Select(Asked)];

    /// <summary>The numbers of right answers among the missing at which the answer would be another.</summary>
    public IReadOnlyList<int> TurnedBy => [.. Enumerable.Range(0, IfRight.Count).Where(right => IfRight[right] != Counted)];

    /// <summary>Rules of counting that would have given another answer.</summary>
    public IReadOnlyList<OtherVerdict> TurnedByRules =>
        [.. Sensitivity.ByOtherRules.Select(other => other with { Answer = Asked(other.Answer) }).Where(other => other.Answer != Counted)];

    /// <summary>The answer to what was asked: of a preference whether a majority is shown, and nothing of a margin.</summary>
    private PanelAnswer Asked(PanelAnswer answer) => (Plan.AsksPreference, answer) switch
    {
        (true, PanelAnswer.DifferenceWithinMargin) => PanelAnswer.DifferenceShown,
        (true, PanelAnswer.MarginRuledOut) => PanelAnswer.Inconclusive,
        _ => answer,
    };
}

/// <summary>How many questions were asked of a panel beside the difference, and what that does.</summary>
public sealed record QuestionsWeighed : PanelLimit
{
    internal QuestionsWeighed(CountedPlan plan, int questions)
        : base(plan, "questions") => Questions = questions;

    /// <summary>Questions asked together: ratings and preference, of all tasters and of those who were right.</summary>
    public int Questions { get; }

    /// <summary>
    /// How often at least one of so many questions shows a difference that is not there, each at 5 % by itself, if they were independent.
    /// </summary>
    public double OneFalseUncorrected => 1 - Math.Pow(1 - RatingCompared.Level, Questions);
}
