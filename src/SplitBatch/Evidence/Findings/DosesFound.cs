using SplitBatch.Bitterness;

namespace SplitBatch.Evidence.Findings;

/// <summary>Something found of the two hop doses.</summary>
public sealed record DosesFound : Finding
{
    internal DosesFound(DosesFoundKind kind, string word)
        : base(Subject.Doses, FindingId.Of("dose", word)) => Kind = kind;

    /// <summary>What it tells of them.</summary>
    public DosesFoundKind Kind { get; }

    /// <summary>The doses.</summary>
    public required ChargeMatch Doses { get; init; }

    /// <summary>The name of half A.</summary>
    public required string NameA { get; init; }

    /// <summary>The name of half B.</summary>
    public required string NameB { get; init; }

    /// <summary>The units that sentences use.</summary>
    public UnitSystem Units { get; init; }
}

/// <summary>What is told of the doses.</summary>
public enum DosesFoundKind
{
    /// <summary>What was weighed.</summary>
    Mass,

    /// <summary>The bitterness that a formula gives.</summary>
    Estimate,

    /// <summary>Plant matter, and wort kept back.</summary>
    Plant,
}
