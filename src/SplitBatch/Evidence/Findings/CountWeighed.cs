using SplitBatch.Numbers;

namespace SplitBatch.Evidence.Findings;

/// <summary>Several sets by one person: what is said of other people counts people and not sets.</summary>
public sealed record RepeatsWeighed : PanelFinding
{
    internal RepeatsWeighed(CountedPlan plan)
        : base(plan, "repeats")
    {
    }

    /// <summary>Sets that are counted.</summary>
    public required int Sets { get; init; }

    /// <summary>People who tasted them.</summary>
    public required int People { get; init; }
}

/// <summary>How likely the count is by guessing, against how likely it is with the margin.</summary>
public sealed record LikelihoodWeighed : PanelFinding
{
    internal LikelihoodWeighed(CountedPlan plan)
        : base(plan, "likelihood")
    {
    }

    /// <summary>The chance of the count at the margin over that by guessing.</summary>
    public required double Ratio { get; init; }
}

/// <summary>What the count says to someone with the prior that the plan states.</summary>
public sealed record PriorWeighed : PanelFinding
{
    internal PriorWeighed(CountedPlan plan)
        : base(plan, "bayes")
    {
    }

    /// <summary>First parameter of the beta prior.</summary>
    public required double PriorA { get; init; }

    /// <summary>Second parameter of the beta prior.</summary>
    public required double PriorB { get; init; }

    /// <summary>The chance, given prior and count, that more than the margin can tell.</summary>
    public required double AboveMargin { get; init; }
}

/// <summary>The panel size from which on every count answers one of the two questions, or is so low that it raises the alarm.</summary>
public sealed record SizeToSettle : PanelFinding
{
    internal SizeToSettle(CountedPlan plan)
        : base(plan, "settle")
    {
    }

    /// <summary>Tasters, one set each.</summary>
    public required int Tasters { get; init; }
}
