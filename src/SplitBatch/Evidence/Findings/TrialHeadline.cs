namespace SplitBatch.Evidence.Findings;

/// <summary>
/// A trial in a few sentences: the question, the answer, the count beside what guessing gives, the largest thing that could explain it
/// otherwise, and the limit.
/// </summary>
public sealed record TrialHeadline : Finding
{
    internal TrialHeadline()
        : base(Subject.Trial, FindingId.Of("headline"))
    {
    }

    /// <inheritdoc/>
    public override FindingRole Role => FindingRole.Headline;

    /// <summary>The name of half A.</summary>
    public required string NameA { get; init; }

    /// <summary>The name of half B.</summary>
    public required string NameB { get; init; }

    /// <summary>The answer.</summary>
    public required HeadlineAnswer Answer { get; init; }

    /// <summary>Whether practice left the plan, so that the result is a lead to follow and not a test.</summary>
    public bool IsLead { get; init; }

    /// <summary>What was done to a sealed plan and goes before the result; empty where nothing was.</summary>
    public IReadOnlyList<DepartedFromPlan> Departures { get; init; } = [];

    /// <summary>Fewer ballots than sealed, where the missing ones could not have changed the answer; null where that is not so.</summary>
    public DepartedFromPlan? Fewer { get; init; }

    /// <summary>What the trial would say under the plan as it was changed too late; null where it was not changed.</summary>
    public TrialHeadline? AsChanged { get; init; }

    /// <summary>The main panel's count; null while none is counted.</summary>
    public PanelFinding? Count { get; init; }

    /// <summary>What the count says of the margin; null where it says nothing.</summary>
    public MarginTested? Margin { get; init; }

    /// <summary>The main panel's plan; null while none is counted.</summary>
    public CountedPlan? Plan { get; init; }

    /// <summary>How a sequential main panel was decided; null for others.</summary>
    public SequentialDecided? Sequential { get; init; }

    /// <summary>The largest thing that could explain the result otherwise; null where none is known.</summary>
    public Confound? Largest { get; init; }
}

/// <summary>The answers that a headline can give.</summary>
public enum HeadlineAnswer
{
    /// <summary>No panel is counted.</summary>
    NoPanel,

    /// <summary>A sequential panel is still being served.</summary>
    UnderWay,

    /// <summary>The count is far below what guessing gives.</summary>
    BelowChance,

    /// <summary>A difference is shown.</summary>
    Shown,

    /// <summary>A difference is shown, and one as large as the margin ruled out.</summary>
    ShownWithinMargin,

    /// <summary>No difference is shown, and one as large as the margin ruled out.</summary>
    RuledOut,

    /// <summary>Neither is answered.</summary>
    Open,

    /// <summary>A majority prefers one half.</summary>
    PreferenceShown,

    /// <summary>No majority is shown to prefer one half.</summary>
    NoPreferenceShown,
}
