using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;

namespace SplitBatch.Evidence.Findings;

/// <summary>Is there a difference? What a panel's test says.</summary>
public sealed record DifferenceTested : PanelFinding
{
    internal DifferenceTested(CountedPlan plan, DifferenceDecision decision)
        : base(plan, "difference") => Decision = decision;

    /// <summary>How it was decided.</summary>
    public DifferenceDecision Decision { get; }

    /// <summary>What the test says.</summary>
    public DifferenceOutcome Outcome =>
        Decision.Shown ? DifferenceOutcome.Shown
        : Decision.Obstacles.HasFlag(Obstacles.Looks) ? DifferenceOutcome.LookedTooOften
        : Decision.Obstacles.HasFlag(Obstacles.Size) ? DifferenceOutcome.CouldNotShow
        : DifferenceOutcome.NotShown;

    /// <summary>Which result is compared with luck.</summary>
    public DifferenceTestKind Test => (Decision.Basis, Plan.Protocol.Sides) switch
    {
        (DecisionBasis.TwoKinds, _) => DifferenceTestKind.Hits,
        (DecisionBasis.People, _) => DifferenceTestKind.Leanings,
        (DecisionBasis.AnyTime, _) => DifferenceTestKind.AnyTime,
        (_, 2) => DifferenceTestKind.EitherWay,
        _ => DifferenceTestKind.RightAnswers,
    };
}

/// <summary>What a test of a difference says.</summary>
public enum DifferenceOutcome
{
    /// <summary>A difference is shown.</summary>
    Shown,

    /// <summary>No difference is shown, which is not the same as none.</summary>
    NotShown,

    /// <summary>No count of so small a panel could have shown one.</summary>
    CouldNotShow,

    /// <summary>A panel read once would have shown one; this one was looked at before.</summary>
    LookedTooOften,
}

/// <summary>Which result a test of a difference compares with luck.</summary>
public enum DifferenceTestKind
{
    /// <summary>So many right answers or more.</summary>
    RightAnswers,

    /// <summary>Answers so unevenly split, either way.</summary>
    EitherWay,

    /// <summary>So strong a leaning of tasters with several sets each, either way.</summary>
    Leanings,

    /// <summary>So many hits or more among as many such answers.</summary>
    Hits,

    /// <summary>A count so telling at any look.</summary>
    AnyTime,
}
