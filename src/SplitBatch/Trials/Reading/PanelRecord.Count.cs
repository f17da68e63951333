using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Trials.Reading;

/// <content>What the ballots say, and what is read from it.</content>
public sealed partial class PanelRecord
{
    /// <summary>Whether there is a key and at least one ballot that counts.</summary>
    public bool HasCount => !IsOpen && counted.Value is { Panel.Counted: > 0 } && (Plan.Protocol.HasKnownChance || BothKindsServed);

    /// <summary>Whether a taster had more than one set counted, so that repeats have to be told from tasters.</summary>
    public bool HasRepeats => Scored.PerTaster.Any(taster => taster.Counted > 1);

    /// <summary>The ballots scored against the key.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet; or the panel is still open.</exception>
    public ScoredPanel Scored => (Counted is var count && IsOpen ? null : count) ?? throw new TrialIncompleteException(
        $"count of panel {Name}", $"the panel is open, and its count is hidden until the last ballot is in or somebody closes it "
            + $"(splitbatch close, or trial.Close(\"{Name}\"))", "4-panel-statistics");

    /// <summary>The count, be the panel open or not: for what says nothing of right and wrong.</summary>
    internal ScoredPanel Counted => counted.Value?.Panel
        ?? throw new TrialIncompleteException($"ballots for panel {Key.Panel}", $"type them into {BallotFile.NameOf(Name)}",
            "4-panel-statistics");

    /// <summary>
    /// Where an open sequential panel stands, as far as anybody may know: whether to serve the next taster. Null for a panel of fixed
    /// size, and without a ballot or key.
    /// </summary>
    internal bool? PoursOn => sequential.Value is { } path ? path.Decision == SequentialDecision.PourOn : null;

    /// <summary>The sealed key, for a step that cannot do without it.</summary>
    /// <exception cref="TrialIncompleteException">There is no key yet.</exception>
    public ServingPlan Key => Serving ?? throw (Codes is not null
        ? new TrialIncompleteException($"key of panel {Name}",
            $"it is kept apart, and is asked for at the close (splitbatch close --key-folder, or trial.Close(\"{Name}\", keyFolder: ...))",
            "4-panel-statistics")
        : new TrialIncompleteException($"serving plan for panel {Name}",
            $"make it with splitbatch serve, or in a cell with trial.Serve(\"{Name}\"), which writes {ServingKeyFile.NameOf(Name)}",
            "1-design"));

    /// <summary>
    /// Both questions asked of the count: is there a difference, and is one that matters ruled out? Repeats by one taster do not count as
    /// new tasters.
    /// </summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance; see <see cref="YesNo"/>.</exception>
    public PanelReading Reading => reading.Value;

    /// <summary>The test of a panel by A/not-A or same/different; null for other protocols.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public YesNoTest? YesNo => yesNo.Value;

    /// <summary>
    /// The course of a panel that was declared sequential, in the order in which its ballots came in; null for a panel of fixed size.
    /// </summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public WaldPath? Sequential => Plan.Stopping == StoppingRule.Sequential && Scored.Returned > 0 ? sequential.Value : null;

    /// <summary>
    /// What the panel says, whatever its protocol and stopping rule, in the sentences of a write-up; never that the beers are the same.
    /// What was done to a sealed plan comes first.
    /// </summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public string InWords => string.Join(" ", PanelFindings.Departures(Finding).Where(departed => departed.Departure.IsOfASealedPlan)
        .Concat(PanelFindings.Results(Finding).Where(IsRead)).Select(finding => Claim.Of(finding).Sentence));

    /// <summary>
    /// Repeats judged by the spread of tasters; null where each taster had one set, or the protocol has no known chance.
    /// </summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public ReplicatedTest? Repeats => Plan.Protocol.HasKnownChance ? Reading.Similarity.Repeats : null;

    /// <summary>What the count says to someone who starts from the plan's prior.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    /// <exception cref="NotApplicableException">Repeats or an early stop make the count no sample of single tasters, or the protocol has
    /// no known chance.</exception>
    public BayesReading Bayes => bayes.Value ?? throw new NotApplicableException(
        $"The count of panel {Name} is not read from a prior: "
            + $"{(HasRepeats ? "repeats by one taster are not new tasters"
                : Plan.Protocol.HasKnownChance
                    ? "it stops by the sequential lines"
                    : $"{Plan.Protocol.Name} has no known guessing chance")}.");

    /// <summary>Whether position, code, order, session, server, repeat or the odd beer drove the answers.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public BiasReport Bias => bias.Value;

    /// <summary>
    /// Ratings and preferences among all tasters and among those who answered right, corrected for the number of questions; null where
    /// none were asked.
    /// </summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public RatingReport? Ratings => ratings.Value;

    /// <summary>The tasters' words tallied by descriptor; null where there are none.</summary>
    public CommentTally? Comments => comments.Value;

    /// <summary>Where practice departed from the plan.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public IReadOnlyList<Departure> Departures => Custody.IsSealed ? [.. AgainstTheSeal()] : Plan.Departures(Scored.Practice);

    /// <summary>What else a reader should know of the count, as sentences.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public IReadOnlyList<string> Remarks => remarks.Value;

    /// <summary>The count as one panel of a forest chart, repeats included.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public PanelCount AsPanelCount() =>
        Scored.AsPanelCount() with { Level = 1 - (2 * Math.Min(Plan.Beta, 0.4999)), Repeats = HasRepeats ? Scored.TasterCounts() : null };

    /// <summary>What the panel's count decides by the rules of its plan.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public PanelDecision Decision => decision.Value;

    /// <summary>What the verdict takes from this panel.</summary>
    internal CountedPanel Finding => new(Plan, Decision, Departures, Remarks)
    {
        Standing = Custody.IsSealed ? PlanStanding.Sealed
            : Plan.Declared is not { } declared
                ? PlanStanding.NotDeclared
                : Scored.Practice.Served < declared ? PlanStanding.DeclaredAfterServing : PlanStanding.Declared,
        People = Sequential?.Tasters ?? Scored.Practice.Tasters,
        Sets = Sequential?.Tasters ?? Scored.Counted,
        Right = Sequential?.Correct ?? Scored.Correct,
        Reading = Plan.Protocol.HasKnownChance ? Reading : null,
        YesNo = YesNo,
        Sequential = Sequential,
        Repeats = Repeats,
        Bayes = Plan is { PriorA: 1, PriorB: 1 } ? null : bayes.Value,
        Ratings = Ratings,
        Comments = Comments,
        BiasWhenAsked = bias,
        BallotFiles = BallotFiles,
    };

    /// <summary>The count in a line, or what is missing.</summary>
    public override string ToString() =>
        counted.Value is { } count && !IsOpen ? $"{Plan.Name}: {count.Panel}" : $"{Plan} Not counted yet.";

    /// <summary>Whether a result belongs to the count, and not to what was asked beside.</summary>
    private static bool IsRead(Finding finding) => finding is
        SetsCounted or KindsCounted or CountBelowChance or DifferenceTested or MarginTested or SequentialDecided or RepeatsWeighed;

    /// <summary>What tasters were asked of a sealed panel besides what its plan says.</summary>
    private List<string> NotSealedBeside => !Custody.IsSealed ? [] : RatingsGiven.Select(rating => rating.Attribute)
        .Concat(Scored.Ballots.Any(ballot => ballot.Ballot.Preferred is not null) ? ["preferred"] : [])
        .Concat(CommentsGiven.Count > 0 ? ["comment"] : [])
        .Distinct(StringComparer.OrdinalIgnoreCase).Except(Plan.AskedBeside, StringComparer.OrdinalIgnoreCase).ToList();

    /// <summary>What was changed too late comes first, then how the panel ended, then what else was done otherwise.</summary>
    private IEnumerable<Departure> AgainstTheSeal()
    {
        var ending = PanelEnding.Departures(Plan, counted.Value!).ToList();
        var practice = Plan.Departures(Scored.Practice with { Served = null });
        return Custody.Departures().Concat(ending).Concat(practice.Where(departure => ending.Count == 0 || departure.What != "tasters"));
    }

    private bool BothKindsServed => Scored.Ballots.Where(ballot => ballot is { IsCounted: true, Set: not null })
        .Select(ballot => Serving!.Design.Differs(ballot.Set!.Order)).Distinct().Count() == 2;

    /// <summary>
    /// What each taster prefers. Repeats by one taster are no new tasters: among even cups, a taster with several sets prefers the half
    /// that was chosen more often.
    /// </summary>
    private IEnumerable<Preference> Preferred()
    {
        var given = PreferredInSets().ToList();
        return !HasRepeats || given.Exists(one => one.Preference.IsUneven)
            ? given.Select(one => one.Preference)
            : given.GroupBy(one => one.Taster, one => one.Preference.Beer).Select(sets =>
            {
                var (a, b) = (sets.Count(beer => beer == Side.A), sets.Count(beer => beer == Side.B));
                var result = Scored.PerTaster.First(taster => taster.Taster == sets.Key);
                return new Preference(a == b ? null : a > b ? Side.A : Side.B, result.Correct == result.Counted);
            });
    }

    /// <summary>Counted ballots that name a preferred cup, or say that none is preferred.</summary>
    private IEnumerable<(string Taster, Preference Preference)> PreferredInSets()
    {
        foreach (var ballot in Scored.Ballots.Where(ballot => ballot.IsCounted))
        {
            if (ballot.Ballot.Preferred is not { } code) continue;
            var cups = ballot.Set!.CodedCups.ToList();
            var cupsB = (double)cups.Count(cup => cup.Beer == Side.B) / cups.Count;
            if (cupsB is 0 or 1) continue;
            if (!code.Any(char.IsAsciiDigit)) yield return (ballot.Set.Taster, new(null, ballot.IsCorrect, cupsB));
            else if (PreferredCup(ballot, code) is { } cup) yield return (ballot.Set.Taster, new(cup.Beer, ballot.IsCorrect, cupsB));
        }
    }

    private Cup? PreferredCup(ScoredBallot ballot, string code) =>
        CupFinder.Find(Serving!, ballot.Ballot.Taster, code, ballot.Set!.Number, out _)?.Cup;

    private IEnumerable<string> Remarked()
    {
        foreach (var ballot in Scored.Excluded) yield return $"A ballot of {ballot.Ballot.Taster} is not counted: {ballot.Reasons}.";
        foreach (var ballot in Scored.Remarkable.Where(ballot => ballot.IsCounted))
        {
            yield return $"A ballot of {ballot.Ballot.Taster} is "
                + $"counted{(ballot.Standing == Standing.CountedAsWrong ? " as wrong" : "")}, as the plan says: {ballot.Reasons}.";
        }

        foreach (var ballot in Scored.Ballots.Where(ballot => ballot.IsCounted))
        {
            if (ballot.Ballot.Preferred is { } code && code.Any(char.IsAsciiDigit) && PreferredCup(ballot, code) is null)
            {
                yield return $"The preference of {ballot.Ballot.Taster} is left out: the code {code} is not in set {ballot.Set!.Number}.";
            }
        }

        foreach (var ballot in Scored.Ballots
            .Where(ballot => ballot is { IsCounted: true, Ballot.Preferred: not null, Set: not null }
                && ballot.Set.CodedCups.DistinctBy(cup => cup.Beer).Count() == 1))
        {
            yield return $"The preference of {ballot.Ballot.Taster} is left out: all cups of set {ballot.Set!.Number} held one beer.";
        }

        if (Scored.Missing.Count > 0)
            yield return $"Ballots not returned: {Scored.Missing.Count} of "
                + $"{Scored.Served}{(Plan.Rules.Missing == BallotRule.CountAsWrong ? ", counted as wrong, as the plan says" : "")}.";
        foreach (var left in RatingsLeftOut) yield return left;
        if (NotSealedBeside is { Count: > 0 } asked)
            yield return $"Asked beside and not sealed beforehand, so a lead and not a test: {string.Join(", ", asked)}.";
        if (Sequential is { Unused: > 0 } path)
            yield return $"Ballots that came in after the sequential panel had decided, and are not counted: {path.Unused}.";
    }
}
