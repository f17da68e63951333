using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using static System.FormattableString;

namespace SplitBatch.Panel.Ballots;

/// <summary>Counts ballots by the sealed key. Nothing is dropped: a ballot that does not count is kept with the reason.</summary>
public static class Scorer
{
    /// <summary>Counts the ballots of one panel.</summary>
    /// <param name="plan">The serving plan, which is the key.</param>
    /// <param name="ballots">The ballots, in any sequence.</param>
    /// <param name="rules">The plan's rules for doubtful ballots; null for <see cref="BallotRules.Default"/>.</param>
    /// <exception cref="ArgumentException">The rules would count what cannot be counted.</exception>
    public static ScoredPanel Score(this ServingPlan plan, IEnumerable<Ballot> ballots, BallotRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(ballots);
        rules = (rules ?? BallotRules.Default).Checked();
        var book = new KeyBook(plan);
        Draft[] drafts = [.. ballots.Select(ballot => new Draft(ballot, plan, rules, book))];
        foreach (var same in drafts.Where(draft => draft.Set is not null).GroupBy(draft => draft.Set!.Number)
            .Where(group => group.Count() > 1))
            SettleDuplicates([.. same], rules.Duplicates);
        HashSet<int> answered = [.. drafts.Where(draft => draft.Set is not null).Select(draft => draft.Set!.Number)];
        return new ScoredPanel(plan, rules, [.. drafts.Select(draft => draft.ToScored())],
            [.. plan.Sets.Where(set => !answered.Contains(set.Number))]);
    }

    /// <summary>A ballot typed into a cell, checked at once: who types it can still ask the taster.</summary>
    /// <param name="plan">The serving plan.</param>
    /// <param name="taster">The taster's name or number.</param>
    /// <param name="answer">What the taster wrote: <c>"482"</c>, <c>"482 517"</c>, <c>"same"</c>, or blank for no answer.</param>
    /// <param name="set">The set's number; needed only where the taster has several and the answer is a word.</param>
    /// <param name="when">When it was handed in.</param>
    /// <returns>The ballot with its set; change what else there is to note with <c>with</c>. Whether it is correct is not said.</returns>
    /// <exception cref="ArgumentException">The taster, the set or a code is not in the key; the message says what was
    /// expected.</exception>
    public static Ballot Enter(this ServingPlan plan, string taster, string answer, int? set = null, DateTimeOffset? when = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var ballot = new Ballot(Guard.NotBlank(taster), answer ?? "") { Set = set, When = when };
        var scored = plan.Score([ballot]).Ballots[0];
        var refused = scored.Notes.FirstOrDefault(note => note.Issue != BallotIssue.NoAnswer);
        if (refused is not null) throw new ArgumentException($"{ballot} was not entered: {refused.Text}.", nameof(answer));
        return ballot with { Set = scored.Set!.Number, Session = scored.Set.Session, Taster = scored.Set.Taster };
    }

    private static void SettleDuplicates(Draft[] same, DuplicateRule rule)
    {
        bool equal = same.Select(draft => draft.Plain).Distinct().Count() == 1;
        // A ballot that is out for another reason does not crowd out one that can be counted.
        Draft[] usable = [.. same.Where(draft => !draft.IsExcluded)];
        Draft? kept = usable.Length == 0 ? null : rule switch
        {
            DuplicateRule.First => usable[0],
            DuplicateRule.Last => usable[^1],
            _ => equal ? usable[0] : null,
        };
        string agree = equal ? "the same answer" : "different answers";
        foreach (var draft in same)
        {
            draft.Note(BallotIssue.Duplicate,
                Invariant($"{same.Length} ballots with {agree} for set ")
                    + Invariant($"{draft.Set!.Number}")
                    + Invariant($"{(draft == kept ? ", this one is used" : kept is null ? ", none is used" : ", another one is used")}"),
                draft == kept ? BallotRule.Count : BallotRule.Exclude);
        }
    }

    /// <summary>The key, ready to be looked up by number and by name.</summary>
    private sealed class KeyBook(ServingPlan plan)
    {
        internal Dictionary<int, ServedSet> ByNumber { get; } = plan.Sets.ToDictionary(set => set.Number);

        internal ILookup<string, ServedSet> ByTaster { get; } = plan.Sets.ToLookup(set => Plain(set.Taster));

        internal static string Plain(string name) => string.Concat(name.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();
    }

    /// <summary>A ballot while it is being judged; each note carries the rule that decides how it counts.</summary>
    private sealed class Draft
    {
        private readonly Ballot ballot;
        private readonly List<BallotNote> notes = [];
        private readonly TasterAnswer? answer;
        private Standing standing = Standing.Counted;

        internal Draft(Ballot ballot, ServingPlan plan, BallotRules rules, KeyBook book)
        {
            this.ballot = ballot;
            if (OtherPanel(plan) is { } other)
            {
                Note(BallotIssue.OtherPanel, other, BallotRule.Exclude);
                return;
            }
            Set = FindSet(book);
            if (Set is null) return;
            answer = TasterAnswer.Read(ballot.Answer, Set, plan.Design, plan.Expected, out string problem);
            if (answer is null)
                Note(string.IsNullOrWhiteSpace(ballot.Answer) ? BallotIssue.NoAnswer : BallotIssue.UnknownCode, problem,
                    rules.NoUsableAnswer);
            if (ballot.KnewVariable || Named(rules.TastersWhoKnew))
                Note(BallotIssue.KnewVariable, "the taster knew the variable", rules.KnewVariable);
            if (ballot.IsBrewer || Named(rules.Brewers)) Note(BallotIssue.Brewer, "the taster brewed the beer", rules.Brewer);
            if (ballot.IsLate || (rules.Closes is { } closes && ballot.When > closes))
                Note(BallotIssue.Late, "handed in late", rules.Late);
        }

        internal ServedSet? Set { get; }

        internal bool IsExcluded => standing == Standing.Excluded;

        /// <summary>The answer in a form in which equal answers are equal.</summary>
        internal string Plain => answer is null
            ? ballot.Answer.Trim()
            : answer.Word ?? string.Join(' ', answer.Cups.Select(cup => cup.Code).Order());

        internal void Note(BallotIssue issue, string text, BallotRule rule)
        {
            notes.Add(new BallotNote(issue, text));
            if (rule == BallotRule.Exclude) standing = Standing.Excluded;
            else if (rule == BallotRule.CountAsWrong && standing == Standing.Counted) standing = Standing.CountedAsWrong;
        }

        internal ScoredBallot ToScored() => new(ballot, Set, answer, standing, notes);

        private bool Named(IReadOnlyList<string> names) => names.Any(name => KeyBook.Plain(name) == KeyBook.Plain(ballot.Taster));

        private string? OtherPanel(ServingPlan plan) =>
            ballot.Panel is { } panel && KeyBook.Plain(panel) != KeyBook.Plain(plan.Panel)
                ? $"it belongs to the panel {panel}, and this is {plan.Panel}"
            : ballot.Protocol is { } protocol && (!Protocol.TryParse(protocol, out var read, out _) || read != plan.Protocol)
                ? $"it answers the protocol {protocol}, and this panel is {plan.Protocol.Name}"
            : null;

        private ServedSet? FindSet(KeyBook book)
        {
            var own = book.ByTaster[KeyBook.Plain(ballot.Taster)]
                .Where(set => ballot.Session is null || set.Session == ballot.Session).ToArray();
            if (!book.ByTaster.Contains(KeyBook.Plain(ballot.Taster)))
            {
                Note(BallotIssue.UnknownTaster, $"the key has no taster \"{ballot.Taster}\"", BallotRule.Exclude);
                return null;
            }
            if (ballot.Set is { } number)
            {
                if (own.FirstOrDefault(set => set.Number == number) is { } found) return found;
                Note(BallotIssue.UnknownSet, book.ByNumber.TryGetValue(number, out var others)
                    ? Invariant($"set {number} was served to {others.Taster} in session {others.Session}")
                    : Invariant($"the key has no set {number}"), BallotRule.Exclude);
                return null;
            }
            if (own.Length == 1) return own[0];
            var holding = own.Where(set => set.CodedCups.Any(cup => ballot.Answer.Contains(cup.Code, StringComparison.Ordinal))).ToArray();
            if (holding.Length == 1) return holding[0];
            Note(BallotIssue.UnknownSet, own.Length == 0
                ? Invariant($"{ballot.Taster} was not served in session {ballot.Session}")
                : Invariant($"{ballot.Taster} had sets {string.Join(", ", own.Select(set => set.Number))} and the ballot names none"),
                BallotRule.Exclude);
            return null;
        }
    }
}
