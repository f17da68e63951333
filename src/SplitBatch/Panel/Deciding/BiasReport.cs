using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Deciding;

/// <summary>
/// All bias checks that a scored panel allows: position, code, order, session, server, repeat, and which beer was the odd or the
/// reference one.
/// </summary>
/// <param name="Checks">The checks, each with its p-value and Holm's correction over all of them.</param>
public sealed record BiasReport(IReadOnlyList<BiasCheck> Checks)
{
    private static readonly string[] Places = ["1st", "2nd", "3rd", "4th", "5th"];

    /// <summary>Checks a scored panel. A grouping in which all sets fall into one group is left out.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    /// <param name="more">Further groupings of the sets, by name: cups of two makes, say.</param>
    /// <param name="seed">Seed of the random deals; null for that of the serving plan, or 1 where it has none.</param>
    /// <param name="draws">Random deals for each check, at least 99.</param>
    public static BiasReport Of(ScoredPanel panel, IReadOnlyDictionary<string, Func<ServedSet, string>>? more = null, long? seed = null,
        int draws = 9999)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var deals = seed ?? panel.Plan.Seed ?? 1;
        ScoredBallot[] counted = [.. panel.Ballots.Where(b => b is { Standing: Standing.Counted, Set: not null, Answer: not null })];
        var found = new List<BiasCheck>();
        var groupings = new List<(string Name, string?[] Group)>();
        Group("serving order", set => set.Order.Text);
        Group("session", set => "session " + set.Session.ToString(CultureInfo.InvariantCulture));
        Group("server", set => set.Server);
        Group("repeat", set => "set " + set.Replicate.ToString(CultureInfo.InvariantCulture));
        Group("beer that was the odd one", set => set.Order.IsMixed ? set.Order.OddBeer?.ToString() : null);
        Group("beer that was the reference", set => set.Order.Reference?.ToString());
        Group("position of the odd cup", set => set.Order.OddPosition is { } place ? Places[place - 1] : null);
        Group("position of the first cup of A",
            set => set.Order.OddPosition is null && set.Order.IsMixed
                ? Places[set.CodedCups.First(c => c.Beer == Side.A).Position - 1]
                : null);
        foreach (var (name, by) in more ?? new Dictionary<string, Func<ServedSet, string>>()) Group(name, by);
        Deal();

        // Answers that name one cup: where do the wrong ones go?
        ScoredBallot[] wrong =
        [
            .. counted.Where(b => b.Answer is { IsCorrect: false, Cups.Count: 1 } && b.Set!.Order.OddPosition is not null),
        ];
        Picks("position", (set, cup) => Places[cup.Position - 1]);
        Picks("code (lowest to highest of the set)",
            (set, cup) => Places[set.CodedCups.Count(other => string.CompareOrdinal(other.Code, cup.Code) < 0)]);

        var adjusted = Holm.Adjust([.. found.Select(c => c.PValue)]);
        return new([.. found.Select((c, i) => c with { AdjustedPValue = adjusted[i] })]);

        void Group(string name, Func<ServedSet, string?> by)
        {
            string?[] group = [.. counted.Select(b => by(b.Set!))];
            if (group.OfType<string>().Distinct().Skip(1).Any()) groupings.Add((name, group));
        }

        // Groupings that leave out the same sets share their deals.
        void Deal()
        {
            foreach (var (i, (name, group)) in groupings.Index())
            {
                if (found.Any(check => check.Name == name)) continue;
                int[] kept = [.. Enumerable.Range(0, group.Length).Where(k => group[k] is not null)];
                var alike = groupings.Skip(i)
                    .Where(other => other.Group.Select(g => g is null).SequenceEqual(group.Select(g => g is null)));
                found.AddRange(BiasCheck.OfRightAnswers([.. kept.Select(k => counted[k].IsCorrect)],
                    [.. alike.Select(other => (other.Name, kept.Select(k => other.Group[k]!).ToArray()))], deals, draws));
            }

            var sequence = groupings.Select(grouping => grouping.Name).ToList();
            found.Sort((one, other) => sequence.IndexOf(one.Name).CompareTo(sequence.IndexOf(other.Name)));
        }

        void Picks(string name, Func<ServedSet, Cup, string> place)
        {
            var picks =
                wrong.Select(
                    b => (place(b.Set!, b.Answer!.Cups[0]),
                        (IReadOnlyList<string>)[.. b.Set!.CodedCups.Where(c => c.Beer == b.Answer.Cups[0].Beer)
                            .Select(c => place(b.Set!, c))]));
            if (BiasCheck.OfWrongPicks(name, picks, deals, draws) is { } check) found.Add(check);
        }
    }

    /// <summary>The biases shown, or that none is, which does not rule one out.</summary>
    public override string ToString()
    {
        var shown = Checks.Where(c => c.BiasShown).ToArray();
        return shown.Length == 0
            ? $"{Checks.Count} checks for bias: none shown, which does not rule one out in a panel of this size."
            : string.Join(Environment.NewLine, shown.Select(c => c.ToString()));
    }
}
