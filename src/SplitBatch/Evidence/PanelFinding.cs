using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence;

/// <summary>What one panel found: its plan, its count, and where practice departed from the plan.</summary>
/// <param name="Plan">The plan, declared before serving.</param>
/// <param name="Reading">Both tests of the count; null for A/not-A and same/different, whose test is <see cref="YesNo"/>.</param>
/// <param name="Departures">Where practice departed from the plan.</param>
/// <param name="Remarks">What else a reader should know of the count, as sentences: ballots left out, repeats, biases.</param>
public sealed record PanelFinding(PanelPlan Plan, PanelReading? Reading, IReadOnlyList<Departure> Departures, IReadOnlyList<string> Remarks)
{
    /// <summary>The test of A/not-A or same/different; null for other protocols.</summary>
    public YesNoTest? YesNo { get; init; }

    /// <summary>The course of a panel that was declared sequential; it decides in place of <see cref="Reading"/>. Null for a panel of fixed size.</summary>
    public WaldPath? Sequential { get; init; }

    /// <summary>Repeats judged by the spread of tasters; null where each taster had one set.</summary>
    public ReplicatedTest? Repeats { get; init; }

    /// <summary>The count read from the plan's prior; null where it does not apply.</summary>
    public BayesReading? Bayes { get; init; }

    /// <summary>Ratings and preferences; null where none were asked.</summary>
    public RatingReport? Ratings { get; init; }

    /// <summary>The tasters' words; null where there are none.</summary>
    public CommentTally? Comments { get; init; }

    /// <summary>The checks for bias; null where they were not made.</summary>
    public BiasReport? Bias => BiasWhenAsked?.Value;

    /// <summary>The checks for bias, which deal answers out at random many times and so are made only when asked for.</summary>
    internal Lazy<BiasReport>? BiasWhenAsked { get; init; }

    /// <summary>The files that the ballots came from.</summary>
    public IReadOnlyList<string> BallotFiles { get; init; } = [];

    /// <summary>Which of the four answers the panel gives.</summary>
    public PanelAnswer Answer => (Sequential, YesNo) switch
    {
        ({ Decision: SequentialDecision.Different }, _) => PanelAnswer.DifferenceShown,
        ({ Decision: SequentialDecision.Similar }, _) => PanelAnswer.MarginRuledOut,
        ({ }, _) => PanelAnswer.Inconclusive,
        (_, { DifferenceShown: true }) => PanelAnswer.DifferenceShown,
        (_, { }) => PanelAnswer.Inconclusive,
        _ => Reading!.Answer,
    };

    /// <summary>Whether a sequential panel is still under way.</summary>
    public bool IsUnderWay => Sequential is { Decision: SequentialDecision.PourOn };

    /// <summary>The files behind the count.</summary>
    internal string[] Sources => [.. BallotFiles.Count > 0 ? BallotFiles : [$"ballots-{Plan.Name}.csv"], $"serving-{Plan.Name}.csv"];
}
