using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// One panel of a trial: its plan, the sealed key, the ballots as they came, the count, and what the tasters were asked beside.
/// </summary>
/// <remarks>What follows from the count is computed once, when it is first asked for.</remarks>
public sealed partial class PanelRecord
{
    private readonly Lazy<CountedBallots?> counted;
    private readonly Lazy<PanelReading> reading;
    private readonly Lazy<PanelDecision> decision;
    private readonly Lazy<YesNoTest?> yesNo;
    private readonly Lazy<WaldPath?> sequential;
    private readonly Lazy<BayesReading?> bayes;
    private readonly Lazy<BiasReport> bias;
    private readonly Lazy<RatingReport?> ratings;
    private readonly Lazy<CommentTally?> comments;
    private readonly Lazy<IReadOnlyList<string>> remarks;

    internal PanelRecord(PanelPlan plan, ServingPlan? serving, IReadOnlyList<Ballot> ballots)
    {
        Plan = plan;
        Serving = serving;
        Ballots = ballots;
        counted = new(() => Serving is { } key && Ballots.Count > 0 ? CountedBallots.Of(key, Ballots, Plan, Custody) : null);
        reading = new(() => HasRepeats
            ? PanelReading.OfRepeats(Plan.Protocol, Scored.TasterCounts(), Plan.Margin, Plan.Alpha, Plan.Beta)
            : PanelReading.Of(Plan.Protocol, Scored.Counted, Scored.Correct, Plan.Margin, Plan.Alpha, Plan.Beta));
        decision = new(() => PanelDecisions.Of(this));
        yesNo = new(() => Plan.Protocol.HasKnownChance ? null : Scored.YesNo(Plan.Alpha));
        sequential =
            new(() => Plan.Stopping != StoppingRule.Sequential || counted.Value is not { } count ? null : Plan.Sequential().Follow(
                count.Panel.Ballots.Where(ballot => ballot.IsCounted).OrderBy(ballot => ballot.Ballot.When ?? DateTimeOffset.MaxValue)
                    .Select(ballot => ballot.IsCorrect)));
        bayes = new(() => HasRepeats || !Plan.Protocol.HasKnownChance || Plan.Stopping == StoppingRule.Sequential
            ? null
            : Scored.Bayes(Plan.Margin, Plan.PriorA, Plan.PriorB));
        // Deals by chance can be stopped, and must not be remembered as stopped.
        bias = new(() => Scored.Bias(), LazyThreadSafetyMode.PublicationOnly);
        ratings =
            new(() => RatingsGiven.Count > 0 || Scored.Ballots.Any(ballot => ballot.Ballot.Preferred is not null)
                ? RatingReport.Of(RatingsGiven, Preferred())
                : null);
        comments = new(() => CommentsGiven.Count > 0 ? CommentTally.Of(CommentsGiven) : null);
        remarks = new(() => [.. Remarked()], LazyThreadSafetyMode.PublicationOnly);
    }

    /// <summary>The plan that decides: as it was sealed, or where nobody sealed it in time as trial.json has it.</summary>
    public PanelPlan Plan { get; }

    /// <summary>How the plan was kept: sealed or not, amended in time, changed too late.</summary>
    public PlanCustody Custody { get; init; } = PlanCustody.NotSealed;

    /// <summary>Who gets which codes; null until the panel is served.</summary>
    public CodeBook? Codes { get; init; }

    /// <summary>
    /// Whether a sealed panel still waits for ballots, so that nobody may know its count: until it is closed, its last ballot is in, or a
    /// sequential panel has reached a line.
    /// </summary>
    public bool IsOpen => Custody is { IsSealed: true, Closed: null }
        && !(counted.Value is { } count
            && (PanelEnding.Missing(Plan, count.Panel) == 0 || sequential.Value is { Decision: not SequentialDecision.PourOn }));

    /// <summary>The plan's name.</summary>
    public string Name => Plan.Name;

    /// <summary>The sealed key: who got which cup; null until it is made.</summary>
    public ServingPlan? Serving { get; }

    /// <summary>The ballots as they came, in the files' order.</summary>
    public IReadOnlyList<Ballot> Ballots { get; }

    /// <summary>The files within the folder that the ballots came from.</summary>
    public IReadOnlyList<string> BallotFiles { get; init; } = [];

    /// <summary>How a web form's export is read as ballots; null where ballots are typed.</summary>
    internal BallotImport? Import { get; init; }

    /// <summary>Each taster's ratings of both beers, decoded by the key.</summary>
    public IReadOnlyList<Rating> RatingsGiven { get; internal set; } = [];

    /// <summary>The tasters' words about single cups, decoded by the key.</summary>
    public IReadOnlyList<Comment> CommentsGiven { get; internal set; } = [];

    /// <summary>Ratings that were left out, each with the reason.</summary>
    internal IReadOnlyList<string> RatingsLeftOut { get; set; } = [];
}
