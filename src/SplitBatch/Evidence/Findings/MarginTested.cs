using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence.Findings;

/// <summary>Is any difference smaller than the margin that matters? What a panel's count says.</summary>
public sealed record MarginTested : PanelFinding
{
    internal MarginTested(CountedPlan plan, MarginDecision decision)
        : base(plan, "margin") => Decision = decision;

    /// <summary>How it was decided, with the one upper limit of this count.</summary>
    public MarginDecision Decision { get; }

    /// <summary>People whose answers are counted.</summary>
    public required int People { get; init; }

    /// <summary>Sets that are counted.</summary>
    public required int Sets { get; init; }

    /// <summary>Right answers among them; for a two-sided protocol, answers for the expected half.</summary>
    public required int Right { get; init; }

    /// <summary>
    /// What the count says of the margin; of several things in the way, the one that no other count would have mended comes first.
    /// </summary>
    public MarginOutcome Outcome => Decision.Obstacles switch
    {
        Obstacles.None => MarginOutcome.RuledOut,
        var why when why.HasFlag(Obstacles.Size) => MarginOutcome.TooFewSets,
        var why when why.HasFlag(Obstacles.People) && Decision.Range is null => MarginOutcome.TooFewPeople,
        var why when why.HasFlag(Obstacles.Count) => IsBelowRange ? MarginOutcome.OtherWayRound : MarginOutcome.NotRuledOut,
        var why when why.HasFlag(Obstacles.People) => Plan.Protocol.Sides == 2 ? MarginOutcome.TooSteady : MarginOutcome.NotRuledOut,
        var why when why.HasFlag(Obstacles.Looks) => MarginOutcome.LookedTooOften,
        _ => MarginOutcome.ControlNotTold,
    };

    /// <summary>How often none of so few people would be among the able, if the margin were true.</summary>
    public double NobodyAble => FewPeople.ChanceOfNobody(People, Plan.Margin);

    private bool IsBelowRange => Plan.IsDirected && Right < Sets * Plan.Protocol.Chance;
}

/// <summary>What a count says of the margin.</summary>
public enum MarginOutcome
{
    /// <summary>A share as large as the margin is ruled out.</summary>
    RuledOut,

    /// <summary>The count is too high to rule it out.</summary>
    NotRuledOut,

    /// <summary>No count of so few sets rules it out.</summary>
    TooFewSets,

    /// <summary>No count of so few people rules it out, with as many sets as they tasted.</summary>
    TooFewPeople,

    /// <summary>The count is below what guessing gives, and a difference the other way round is not ruled out.</summary>
    OtherWayRound,

    /// <summary>Too many tasters always chose the same half, some perhaps the one and some the other.</summary>
    TooSteady,

    /// <summary>A panel read once would have ruled it out; this one was looked at before.</summary>
    LookedTooOften,

    /// <summary>The panel did not tell its control, so it rules nothing out.</summary>
    ControlNotTold,
}
