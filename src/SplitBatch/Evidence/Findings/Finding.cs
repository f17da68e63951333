namespace SplitBatch.Evidence.Findings;

/// <summary>
/// One thing that was found: what was asked, what came out, the numbers, and where they come from. A sentence is made from it by one
/// phrase of the phrasebook.
/// </summary>
/// <remarks>
/// A finding holds numbers and outcomes and no words of its own, so that a headline, a ledger, a caption and a check that speak of one
/// thing speak from one value and cannot disagree.
/// </remarks>
public abstract record Finding
{
    private protected Finding(Subject about, FindingId id) => (About, Id) = (about, id);

    /// <summary>What it is about.</summary>
    public Subject About { get; }

    /// <summary>Its lasting name, unlike any other's in the trial.</summary>
    public FindingId Id { get; }

    /// <summary>What it does in a write-up: a result, a limit of the results, an over-reading to be warned of, or a next step.</summary>
    public virtual FindingRole Role => FindingRole.Result;

    /// <summary>How the numbers are made: the test, formula or standard.</summary>
    public string Method { get; init; } = "follows from the design of the trial";

    /// <summary>The files (and rows) of the trial folder that the numbers come from; empty where there are none.</summary>
    public IReadOnlyList<string> Sources { get; init; } = [];
}

/// <summary>What a finding does in a write-up.</summary>
public enum FindingRole
{
    /// <summary>The whole trial in a few sentences.</summary>
    Headline,

    /// <summary>A result.</summary>
    Result,

    /// <summary>Something that limits the results.</summary>
    Limit,

    /// <summary>What a reader might take from the results and must not.</summary>
    NotShown,

    /// <summary>What would settle what is open, or what to test next.</summary>
    Next,
}
