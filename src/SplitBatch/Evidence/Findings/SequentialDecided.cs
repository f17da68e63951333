using SplitBatch.Panel.Planning;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Findings;

/// <summary>What a panel says that stops at one of two lines.</summary>
public sealed record SequentialDecided : PanelFinding
{
    internal SequentialDecided(CountedPlan plan)
        : base(plan, "difference")
    {
    }

    /// <summary>Which line was reached, if any.</summary>
    public required SequentialDecision Decision { get; init; }

    /// <summary>How often guessers end with a difference shown.</summary>
    public required double FalselyShown { get; init; }

    /// <summary>How often a share of tasters as large as the margin is let pass.</summary>
    public required double FalselyRuledOut { get; init; }

    /// <summary>Tasters on average, if all guess.</summary>
    public required double TastersIfNone { get; init; }

    /// <summary>Tasters on average, if the margin is true.</summary>
    public required double TastersAtMargin { get; init; }
}
