using static System.FormattableString;

namespace SplitBatch.Panel.Ballots;

/// <summary>One answer of one taster, as it was written down. It is never altered: what is wrong with it is said beside it.</summary>
/// <param name="Taster">The taster's name or number, as on the sheet.</param>
/// <param name="Answer">What the taster wrote: a code, two codes, or a word. Blank where nothing was written.</param>
public sealed record Ballot(string Taster, string Answer)
{
    /// <summary>The set's number; null where the ballot names none.</summary>
    public int? Set { get; init; }

    /// <summary>The sitting; null where the ballot names none.</summary>
    public int? Session { get; init; }

    /// <summary>When it was handed in; null where nobody noted it.</summary>
    public DateTimeOffset? When { get; init; }

    /// <summary>
    /// The code of the cup that the taster likes best, where that was asked; null where it was not, or the taster likes none best.
    /// </summary>
    public string? Preferred { get; init; }

    /// <summary>How sure the taster was, in the words or numbers of the sheet.</summary>
    public string? Confidence { get; init; }

    /// <summary>Whether the taster knew which variable was changed.</summary>
    public bool KnewVariable { get; init; }

    /// <summary>Whether the taster brewed the beer.</summary>
    public bool IsBrewer { get; init; }

    /// <summary>Whether it was handed in late, as noted by hand.</summary>
    public bool IsLate { get; init; }

    /// <summary>The panel it belongs to, where the file says so.</summary>
    public string? Panel { get; init; }

    /// <summary>The protocol it answers, where the file says so.</summary>
    public string? Protocol { get; init; }

    /// <summary>A remark.</summary>
    public string? Comment { get; init; }

    /// <summary>The line it stands on in its file; null for one entered in a cell.</summary>
    public int? Row { get; init; }

    /// <summary>For example <c>T07, set 17: 482</c>.</summary>
    public override string ToString() =>
        Invariant($"{Taster}{(Set is { } set ? Invariant($", set {set}") : "")}: ")
            + Invariant($"{(string.IsNullOrWhiteSpace(Answer) ? "no answer" : Answer)}");
}
