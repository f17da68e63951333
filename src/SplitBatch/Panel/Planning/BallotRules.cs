namespace SplitBatch.Panel.Planning;

/// <summary>What becomes of a ballot that is doubtful. Whatever the rule, it is named and kept.</summary>
public enum BallotRule
{
    /// <summary>Left out of the count, and named.</summary>
    Exclude,

    /// <summary>Counted like any other, and named.</summary>
    Count,

    /// <summary>Counted as a wrong answer, and named.</summary>
    CountAsWrong,
}

/// <summary>Which of several ballots for one set is counted.</summary>
public enum DuplicateRule
{
    /// <summary>The one that stands first in the file.</summary>
    First,

    /// <summary>The one that stands last in the file.</summary>
    Last,

    /// <summary>The first if all of them give the same answer, otherwise none.</summary>
    FirstIfEqual,
}

/// <summary>The plan's rules for doubtful ballots, to be settled before pouring; change what differs with <c>with</c>.</summary>
public sealed record BallotRules
{
    /// <summary>The rules that hold where the plan states none.</summary>
    public static BallotRules Default { get; } = new();

    /// <summary>Several ballots for one set.</summary>
    public DuplicateRule Duplicates { get; init; } = DuplicateRule.First;

    /// <summary>A taster who knew which variable was changed: such an answer is not blind.</summary>
    public BallotRule KnewVariable { get; init; } = BallotRule.Exclude;

    /// <summary>The brewer tasting their own beer.</summary>
    public BallotRule Brewer { get; init; } = BallotRule.Exclude;

    /// <summary>A ballot noted as late, or handed in after <see cref="Closes"/>.</summary>
    public BallotRule Late { get; init; } = BallotRule.Exclude;

    /// <summary>
    /// A ballot with no answer, or with a code that is not in its set. It cannot be <see cref="BallotRule.Count"/>ed as it stands.
    /// </summary>
    public BallotRule NoUsableAnswer { get; init; } = BallotRule.Exclude;

    /// <summary>A set that no ballot came back for: left out, or counted as wrong.</summary>
    public BallotRule Missing { get; init; } = BallotRule.Exclude;

    /// <summary>When the key was opened; a ballot handed in later is late. Null where no time is set.</summary>
    public DateTimeOffset? Closes { get; init; }

    /// <summary>Tasters who brewed the beer, for sheets that do not ask.</summary>
    public IReadOnlyList<string> Brewers { get; init; } = [];

    /// <summary>Tasters who knew the variable, for sheets that do not ask.</summary>
    public IReadOnlyList<string> TastersWhoKnew { get; init; } = [];

    internal BallotRules Checked() =>
        NoUsableAnswer == BallotRule.Count
            ? throw new ArgumentException(
                "A ballot without a usable answer can be excluded or counted as wrong, but not counted as it stands.")
        : Missing == BallotRule.Count
            ? throw new ArgumentException("A missing ballot can be excluded or counted as wrong, but not counted as it stands.")
        : this;
}
