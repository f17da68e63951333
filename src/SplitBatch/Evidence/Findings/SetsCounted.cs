namespace SplitBatch.Evidence.Findings;

/// <summary>How many blind sets were tasted and answered right, of a protocol with a known guessing chance.</summary>
public sealed record SetsCounted : PanelFinding
{
    internal SetsCounted(CountedPlan plan)
        : base(plan, "count")
    {
    }

    /// <summary>People whose answers are counted.</summary>
    public required int People { get; init; }

    /// <summary>Sets that are counted.</summary>
    public required int Sets { get; init; }

    /// <summary>Right answers; for a two-sided protocol, times the expected half was named.</summary>
    public required int Right { get; init; }

    /// <summary>Whether sets were served one after another until a line was reached.</summary>
    public bool OneAfterAnother { get; init; }

    /// <summary>The right answers that guessing gives on average.</summary>
    public double ByGuessing => Sets * Plan.Protocol.Chance;

    /// <summary>Whether somebody tasted more than one set.</summary>
    public bool HasRepeats => Sets > People;
}

/// <summary>How both kinds of set of A/not-A or same/different were answered.</summary>
public sealed record KindsCounted : PanelFinding
{
    internal KindsCounted(CountedPlan plan)
        : base(plan, "count")
    {
    }

    /// <summary>Sets with a difference.</summary>
    public required int Different { get; init; }

    /// <summary>Of those, how many were called different, or not A.</summary>
    public required int Hits { get; init; }

    /// <summary>Sets without a difference.</summary>
    public required int Alike { get; init; }

    /// <summary>Of those, how many were called different, or not A.</summary>
    public required int FalseAlarms { get; init; }
}

/// <summary>A count so far below what guessing gives that something must be wrong: direction, key, codes, blinding or question.</summary>
public sealed record CountBelowChance : PanelFinding
{
    internal CountBelowChance(CountedPlan plan)
        : base(plan, "alarm")
    {
    }

    /// <summary>The chance of so few right answers by guessing alone.</summary>
    public required double LowTail { get; init; }

    /// <summary>The chance of a count as unlikely, either way, by guessing alone.</summary>
    public required double EitherWay { get; init; }
}
