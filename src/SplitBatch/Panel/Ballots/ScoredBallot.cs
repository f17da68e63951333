using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Ballots;

/// <summary>What became of a ballot.</summary>
public enum Standing
{
    /// <summary>In the count, as it was answered.</summary>
    Counted,

    /// <summary>In the count, as a wrong answer.</summary>
    CountedAsWrong,

    /// <summary>Out of the count.</summary>
    Excluded,
}

/// <summary>What may be remarkable about a ballot.</summary>
public enum BallotIssue
{
    /// <summary>Another ballot answers the same set.</summary>
    Duplicate,

    /// <summary>The taster knew which variable was changed.</summary>
    KnewVariable,

    /// <summary>The taster brewed the beer.</summary>
    Brewer,

    /// <summary>It was handed in late.</summary>
    Late,

    /// <summary>No answer was written.</summary>
    NoAnswer,

    /// <summary>The answer cannot be read, or names a code that is not in the set.</summary>
    UnknownCode,

    /// <summary>The key has no such taster.</summary>
    UnknownTaster,

    /// <summary>The key has no such set, the set is another taster's, or the set cannot be told.</summary>
    UnknownSet,

    /// <summary>It belongs to another panel or protocol.</summary>
    OtherPanel,
}

/// <summary>Something remarkable about a ballot, in words.</summary>
/// <param name="Issue">What kind.</param>
/// <param name="Text">The particulars, as a clause.</param>
public sealed record BallotNote(BallotIssue Issue, string Text);

/// <summary>A ballot with its set, its judgement and what became of it.</summary>
/// <param name="Ballot">The ballot as it was written.</param>
/// <param name="Set">The set it answers, or null where none can be told.</param>
/// <param name="Answer">The answer read, or null where it cannot be.</param>
/// <param name="Standing">Whether and how it counts.</param>
/// <param name="Notes">Everything remarkable about it.</param>
public sealed record ScoredBallot(
    Ballot Ballot, ServedSet? Set, TasterAnswer? Answer, Standing Standing, IReadOnlyList<BallotNote> Notes)
{
    /// <summary>Whether it is in the count.</summary>
    public bool IsCounted => Standing != Standing.Excluded;

    /// <summary>Whether it is in the count as correct.</summary>
    public bool IsCorrect => Standing == Standing.Counted && Answer is { IsCorrect: true };

    /// <summary>The notes as one clause; empty where there are none.</summary>
    public string Reasons => string.Join("; ", Notes.Select(note => note.Text));

    /// <summary>
    /// The ballot, how it counts, and why. It does not say whether it is correct, so that a list can be read before the key is opened.
    /// </summary>
    public override string ToString() =>
        $"{Ballot}: {Standing switch { Standing.Counted => "counted", Standing.Excluded => "not counted", _ => "counted as wrong" }}"
            + $"{(Notes.Count == 0 ? "" : $" ({Reasons})")}";
}
