using static System.FormattableString;

namespace SplitBatch.Panel;

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
                group.Key, group.Count(), counted[group.Key].Count() + (MissingCounted > 0 ? missing[group.Key].Count() : 0), counted[group.Key].Count(ballot => ballot.IsCorrect)))];
        }
    }

    private int MissingCounted => Rules.Missing == BallotRule.CountAsWrong ? Missing.Count : 0;

    /// <summary>For example <c>triangle: 11 of 20 correct; 21 served, 20 returned, 1 missing</c>.</summary>
    public override string ToString() =>
        Invariant($"{Protocol.Name}: {Correct} of {Counted} {(Protocol.Sides == 2 ? $"for {Plan.Expected}" : "correct")}; {Served} served, {Returned} returned, {Excluded.Count} not counted, {Missing.Count} missing");
}
