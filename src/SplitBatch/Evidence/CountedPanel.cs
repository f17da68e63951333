using SplitBatch.Evidence.Findings;
using SplitBatch.Numbers;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence;

/// <summary>One panel as counted: its plan, what its count decides, and where practice departed from the plan.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Decision">What the count says by the rules of the plan; the course of a sequential panel is
/// <see cref="Sequential"/>.</param>
/// <param name="Departures">Where practice departed from the plan.</param>
/// <param name="Remarks">What else a reader should know of the count, as sentences: ballots left out, and how doubtful ones were
/// counted.</param>
public sealed record CountedPanel(PanelPlan Plan, PanelDecision Decision, IReadOnlyList<Departure> Departures,
    IReadOnlyList<string> Remarks)
{
    /// <summary>Whether the plan's limits were fixed before the first ballot.</summary>
    public PlanStanding Standing { get; init; }

    /// <summary>People whose answers are counted.</summary>
    public required int People { get; init; }

    /// <summary>Sets that are counted.</summary>
    public required int Sets { get; init; }

    /// <summary>Right answers among them; for a two-sided protocol, times the expected half was named.</summary>
    public required int Right { get; init; }

    /// <summary>Ballots that did not come back.</summary>
    public int Missing { get; init; }

    /// <summary>Both tests of the count with their intervals, for charts and tables; null for A/not-A and same/different.</summary>
    public PanelReading? Reading { get; init; }

    /// <summary>The test of A/not-A or same/different; null for other protocols.</summary>
    public YesNoTest? YesNo { get; init; }

    /// <summary>
    /// The course of a panel that was declared sequential; it decides in place of <see cref="Decision"/>. Null for a panel of fixed size.
    /// </summary>
    public WaldPath? Sequential { get; init; }

    /// <summary>Repeats judged by the spread of tasters; null where each taster had one set.</summary>
    public ReplicatedTest? Repeats { get; init; }

    /// <summary>The count read from the plan's prior; null where the plan states none, or it does not apply.</summary>
    public BayesReading? Bayes { get; init; }

    /// <summary>Ratings and preferences; null where none were asked.</summary>
    public RatingReport? Ratings { get; init; }

    /// <summary>The tasters' words; null where there are none.</summary>
    public CommentTally? Comments { get; init; }

    /// <summary>The control set with a known difference; null where none was served.</summary>
    public KnownControl? Control { get; init; }

    /// <summary>The checks for bias; null where they were not made.</summary>
    public BiasReport? Bias => BiasWhenAsked?.Value;

    /// <summary>The checks for bias, which deal answers out at random many times and so are made only when asked for.</summary>
    internal Lazy<BiasReport>? BiasWhenAsked { get; init; }

    /// <summary>The files that the ballots came from.</summary>
    public IReadOnlyList<string> BallotFiles { get; init; } = [];

    /// <summary>Which answer the panel gives.</summary>
    public PanelAnswer Answer => (Decision.Answer, Sequential?.Decision) switch
    {
        _ when LowTail <= LowCountAlarm.DefaultLevel => PanelAnswer.Alarm,
        (_, SequentialDecision.Different) => PanelAnswer.DifferenceShown,
        (_, SequentialDecision.Similar) => PanelAnswer.MarginRuledOut,
        (_, { }) => PanelAnswer.Inconclusive,
        (var answer, null) => answer,
    };

    /// <summary>
    /// The chance of so few right answers by guessing; for A/not-A and same/different, of so few hits among as many such answers. 1 for a
    /// two-sided pair, which expects none.
    /// </summary>
    internal double LowTail => YesNo is { } test ? FisherExact.UpperTail(test.FalseAlarms, test.Alike, test.Hits, test.Different)
        : Decision is { Protocol.Sides: 1, Alarm: { } alarm } ? alarm.PValue
        : 1;

    /// <summary>Whether a sequential panel is still under way.</summary>
    public bool IsUnderWay => Sequential is { Decision: SequentialDecision.PourOn };

    /// <summary>Whether it was planned beforehand and kept to its plan; without that a result is a lead and not a test.</summary>
    public bool KeptToPlan => Departures.All(departure => departure.Severity != Severity.Error);

    /// <summary>What findings need of the plan.</summary>
    internal CountedPlan Planned => CountedPlan.Of(Plan, Standing);

    /// <summary>The files behind the count.</summary>
    internal string[] Sources => [.. BallotFiles.Count > 0 ? BallotFiles : [$"ballots-{Plan.Name}.csv"], $"serving-{Plan.Name}.csv"];
}
