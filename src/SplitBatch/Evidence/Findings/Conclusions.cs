namespace SplitBatch.Evidence.Findings;

/// <summary>Something that a reader might take from a trial and must not.</summary>
public sealed record OverReading : Finding
{
    internal OverReading(Subject about, OverReadingKind kind, string word)
        : base(about, FindingId.Of("not", word)) => Kind = kind;

    /// <summary>Which over-reading it warns of.</summary>
    public OverReadingKind Kind { get; }

    /// <inheritdoc/>
    public override FindingRole Role => FindingRole.NotShown;
}

/// <summary>The over-readings that outcomes invite.</summary>
public enum OverReadingKind
{
    /// <summary>That everybody notices.</summary>
    Everybody,

    /// <summary>That everybody prefers what a majority prefers.</summary>
    EverybodyPrefers,

    /// <summary>That one beer is liked better, or that the reason is known.</summary>
    Liking,

    /// <summary>That the beers are the same, where a margin is ruled out.</summary>
    SameBelowMargin,

    /// <summary>That the beers taste the same, where nothing is settled.</summary>
    SameThoughOpen,

    /// <summary>That the belief is wrong, or right.</summary>
    Belief,

    /// <summary>Anything from a count below chance.</summary>
    BelowChance,

    /// <summary>That people cannot tell, because no majority prefers one.</summary>
    PreferenceIsNoTest,

    /// <summary>Anything about taste, where no panel is counted.</summary>
    Taste,

    /// <summary>That a measured difference is tasted.</summary>
    MeasuredIsTasted,

    /// <summary>That halves within the method's scatter are equal.</summary>
    WithinScatterIsEqual,

    /// <summary>That it carries over to other beers.</summary>
    Elsewhere,
}

/// <summary>What would settle what is open, or what to test next.</summary>
public sealed record NextStep : Finding
{
    internal NextStep(Subject about, NextStepKind kind, string word)
        : base(about, FindingId.Of("next", word)) => Kind = kind;

    /// <summary>What to do.</summary>
    public NextStepKind Kind { get; }

    /// <summary>How many tasters it takes; 0 where it is no question of number.</summary>
    public int Tasters { get; init; }

    /// <inheritdoc/>
    public override FindingRole Role => FindingRole.Next;
}

/// <summary>The steps that outcomes suggest.</summary>
public enum NextStepKind
{
    /// <summary>Serve the declared panel.</summary>
    ServePanel,

    /// <summary>Serve the next taster of a sequential panel.</summary>
    ServeNextTaster,

    /// <summary>Look for what went wrong, and serve a new panel.</summary>
    FindTheFault,

    /// <summary>Serve a new panel by a protocol that can rule a difference out.</summary>
    OtherProtocol,

    /// <summary>Serve a new, larger panel.</summary>
    LargerPanel,

    /// <summary>Brew the pair again.</summary>
    BrewAgain,

    /// <summary>Ask those who can tell what they taste.</summary>
    AskWhat,

    /// <summary>Try a larger change of the variable.</summary>
    LargerChange,

    /// <summary>Test whether people can tell, in a panel planned for that.</summary>
    TestTelling,

    /// <summary>Send both halves to a lab.</summary>
    SendToLab,

    /// <summary>Ask what the lab's precision means.</summary>
    AskPrecision,

    /// <summary>Correct the doses by what the lab measured.</summary>
    CorrectDoses,
}
