using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using static System.FormattableString;

namespace SplitBatch.Panel.Ballots;

/// <summary>A panel counted by the key: the totals, and every ballot with what became of it.</summary>
/// <param name="Plan">The serving plan, which is the key.</param>
/// <param name="Rules">The rules that doubtful ballots were counted by.</param>
/// <param name="Ballots">Every ballot, in the file's order.</param>
/// <param name="Missing">Sets that no ballot came back for.</param>
public sealed record ScoredPanel(
    ServingPlan Plan, BallotRules Rules, IReadOnlyList<ScoredBallot> Ballots, IReadOnlyList<ServedSet> Missing)
{
    /// <summary>The protocol.</summary>
    public Protocol Protocol => Plan.Protocol;

    /// <summary>Sets served.</summary>
    public int Served => Plan.Sets.Count;

    /// <summary>Ballots handed in, whatever became of them.</summary>
    public int Returned => Ballots.Count;

    /// <summary>Answers counted, sets counted as wrong included.</summary>
    public int Counted => Ballots.Count(ballot => ballot.IsCounted) + MissingCounted;

    /// <summary>Answers counted as correct. For a two-sided paired comparison: times the expected beer was named.</summary>
    public int Correct => Ballots.Count(ballot => ballot.IsCorrect);

    /// <summary>Ballots left out of the count, with their reasons.</summary>
    public IReadOnlyList<ScoredBallot> Excluded => [.. Ballots.Where(ballot => !ballot.IsCounted)];

    /// <summary>Ballots with something remarkable, whether counted or not.</summary>
    public IReadOnlyList<ScoredBallot> Remarkable => [.. Ballots.Where(ballot => ballot.Notes.Count > 0)];

    /// <summary>How many ballots have each kind of note.</summary>
    public IReadOnlyDictionary<BallotIssue, int> Issues =>
        Ballots.SelectMany(ballot => ballot.Notes.Select(note => note.Issue).Distinct()).CountBy(issue => issue).ToDictionary();

    /// <summary>The count of each taster, in seat order.</summary>
    public IReadOnlyList<TasterResult> PerTaster
    {
        get
        {
            var counted = Ballots.Where(ballot => ballot.IsCounted).ToLookup(ballot => ballot.Set!.Taster);
            var missing = Missing.ToLookup(set => set.Taster);
            return [.. Plan.Sets.GroupBy(set => set.Taster).Select(group => new TasterResult(
                group.Key, group.Count(), counted[group.Key].Count() + (MissingCounted > 0 ? missing[group.Key].Count() : 0),
                counted[group.Key].Count(ballot => ballot.IsCorrect)))];
        }
    }

    /// <summary>What was done, for comparison with what was declared.</summary>
    public PanelPractice Practice => new(Protocol, PerTaster.Count(taster => taster.Counted > 0), Counted)
    {
        Seed = Plan.Seed,
        Sessions = Plan.Sessions.Count,
        Orders = Plan.Balance,
        Served = Ballots.Min(ballot => ballot.Ballot.When) is { } first ? DateOnly.FromDateTime(first.DateTime) : null,
    };

    /// <summary>
    /// For A/not-A and same/different: how often each word was counted for each kind of set. The kinds are A and B, or same and different;
    /// blank for sets counted as wrong without an answer.
    /// </summary>
    public IReadOnlyDictionary<(string Served, string Said), int> Answers =>
        Plan.Design.AnswersByCode ? new Dictionary<(string, string), int>()
        : Ballots.Where(ballot => ballot.IsCounted)
            .CountBy(ballot => (KindOf(ballot.Set!), ballot.Standing == Standing.Counted ? ballot.Answer!.Word! : "")).ToDictionary();

    /// <summary>
    /// Everything remarkable as a list of faults, for the report on a trial folder. None stops the work: the rules say how each ballot
    /// counts.
    /// </summary>
    /// <param name="file">The ballots' file.</param>
    public IReadOnlyList<Fault> Faults(string file) =>
        [.. Remarkable.Select(
            ballot =>
                new Fault(file, $"{ballot.Ballot.Taster}{(ballot.Set is { } set ? Invariant($", set {set.Number}") : "")}: "
                    + $"{ballot.Reasons} ({(ballot.IsCounted ? "counted" : "not counted")}).")
                    { Row = ballot.Ballot.Row, Severity = Severity.Warning }),
         .. Missing.Select(
             set => new Fault(file, Invariant($"{set.Taster}, set {set.Number}: no ballot came back.")) { Severity = Severity.Warning })];

    private string KindOf(ServedSet set) =>
        Plan.Design.Answer == AnswerKind.OwnOrNot ? set.Order.Text : set.Order.IsMixed ? "different" : "same";

    private int MissingCounted => Rules.Missing == BallotRule.CountAsWrong ? Missing.Count : 0;

    /// <summary>For example <c>triangle: 11 of 20 correct; 21 served, 20 returned, 1 missing</c>.</summary>
    public override string ToString() =>
        Invariant($"{Protocol.Name}: {Correct} of {Counted} {(Protocol.Sides == 2 ? $"for {Plan.Expected}" : "correct")}; {Served} ")
            + Invariant($"served, {Returned} returned, {Excluded.Count} not counted, {Missing.Count} missing");
}

/// <summary>The count of one taster.</summary>
/// <param name="Taster">The taster.</param>
/// <param name="Served">Sets served.</param>
/// <param name="Counted">Sets counted.</param>
/// <param name="Correct">Sets counted as correct.</param>
public sealed record TasterResult(string Taster, int Served, int Counted, int Correct)
{
    /// <summary>For example <c>T07: 3 of 4</c>.</summary>
    public override string ToString() =>
        Invariant($"{Taster}: {Correct} of {Counted}{(Counted < Served ? Invariant($" ({Served} served)") : "")}");
}
