using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>What a bias check counts.</summary>
public enum BiasKind
{
    /// <summary>Right answers in each group of sets: does it matter where or how a set was served?</summary>
    RightAnswers,

    /// <summary>Wrong picks in each place: are those who guess drawn to one place?</summary>
    WrongPicks,
}

/// <summary>One group of a bias check.</summary>
/// <param name="Label">First, second; ABB, BAA; session 1 ...</param>
/// <param name="Sets">Sets in the group; for wrong picks, the times this cup could have been wrongly picked.</param>
/// <param name="Count">Right answers, or wrong picks.</param>
/// <param name="Expected">The count expected if the grouping did not matter.</param>
public sealed record BiasGroup(string Label, int Sets, int Count, double Expected);

/// <summary>Whether the answers depended on something that should not matter.</summary>
/// <param name="Name">What the sets or cups are grouped by.</param>
/// <param name="Kind">What is counted.</param>
/// <param name="Groups">The groups in order.</param>
/// <param name="PValue">The chance of groups so uneven if the grouping did not matter: chi-square statistic, by random dealing.</param>
/// <param name="Draws">Random deals behind the p-value.</param>
/// <param name="Seed">Their seed.</param>
public sealed record BiasCheck(string Name, BiasKind Kind, IReadOnlyList<BiasGroup> Groups, double PValue, int Draws, long Seed)
{
    /// <summary>The p-value after Holm's correction over all checks of the panel.</summary>
    public double AdjustedPValue { get; init; } = PValue;

    /// <summary>Whether a bias is shown at 5 % after correction.</summary>
    public bool BiasShown => AdjustedPValue <= 0.05;

    /// <summary>
    /// For example <c>right answers by position of the odd cup: first 5 of 8, second 3 of 8, third 3 of 8; no bias shown (p = 0.62),
    /// which does not rule one out</c>.
    /// </summary>
    public override string ToString()
    {
        var what = Kind == BiasKind.RightAnswers ? "right answers by" : "wrong picks by";
        var groups = string.Join(", ", Groups.Select(g => FormattableString.Invariant($"{g.Label} {g.Count} of {g.Sets}")));
        return $"{what} {Name}: {groups}; {(BiasShown ? "a bias is shown" : "no bias shown")} "
            + $"({Printed.PValue(PValue)}{(AdjustedPValue > PValue ? $", corrected {Printed.PValue(AdjustedPValue)}" : "")})"
            + $"{(BiasShown ? "" : ", which does not rule one out")}";
    }

    /// <summary>Tests whether right answers are spread evenly over groups of sets, by dealing the right answers out at random.</summary>
    /// <param name="name">What the sets are grouped by.</param>
    /// <param name="sets">Each set's group and whether it was answered right; at least one set.</param>
    /// <param name="seed">Seed of the random deals.</param>
    /// <param name="draws">Random deals, at least 99.</param>
    /// <exception cref="ArgumentException">No sets.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Too few draws.</exception>
    public static BiasCheck OfRightAnswers(string name, IEnumerable<(string Group, bool IsRight)> sets, long seed, int draws = 9999)
    {
        ArgumentNullException.ThrowIfNull(sets);
        (string Group, bool IsRight)[] rows = [.. sets];
        if (rows.Length == 0) throw new ArgumentException("There are no sets to check.", nameof(sets));
        return OfRightAnswers([.. rows.Select(r => r.IsRight)], [(name, [.. rows.Select(r => r.Group)])], seed, draws)[0];
    }

    /// <summary>
    /// The same for several groupings of the same sets: the right answers are dealt out once for all of them, and each check is what it
    /// would be by itself.
    /// </summary>
    /// <param name="right">Whether each set was answered right; at least one set.</param>
    /// <param name="groupings">What the sets are grouped by, and the group of each set.</param>
    /// <param name="seed">Seed of the random deals.</param>
    /// <param name="draws">Random deals, at least 99.</param>
    internal static IReadOnlyList<BiasCheck> OfRightAnswers(bool[] right, IReadOnlyList<(string Name, string[] Group)> groupings,
        long seed, int draws)
    {
        Guard.InRange(draws, 99, 10_000_000);
        var share = (double)right.Count(r => r) / right.Length;
        Grouping[] by = [.. groupings.Select(one => new Grouping(one.Group, share, right))];
        var random = new SeededRandom(seed);
        for (var draw = 0; draw < draws; draw++)
        {
            LongCall.Look();
            random.Shuffle(right.AsSpan());
            foreach (var grouping in by) grouping.Deal(right);
        }

        return [.. by.Select((one, k) =>
            new BiasCheck(groupings[k].Name, BiasKind.RightAnswers, one.Groups, (one.Reached + 1.0) / (draws + 1), draws, seed))];
    }

    /// <summary>
    /// Tests whether wrong picks are spread evenly over places, by dealing each wrong pick out at random among the cups that would have
    /// been wrong.
    /// </summary>
    /// <param name="name">What the cups are told apart by.</param>
    /// <param name="picks">For each wrong answer, the place picked and all places that would have been wrong; sets with one such place
    /// say nothing and are left out.</param>
    /// <param name="seed">Seed of the random deals.</param>
    /// <param name="draws">Random deals, at least 99.</param>
    /// <returns>The check, or null where no set has a choice of wrong cups.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Too few draws.</exception>
    public static BiasCheck? OfWrongPicks(string name, IEnumerable<(string Picked, IReadOnlyList<string> Wrong)> picks, long seed,
        int draws = 9999)
    {
        ArgumentNullException.ThrowIfNull(picks);
        Guard.InRange(draws, 99, 10_000_000);
        (string Picked, IReadOnlyList<string> Wrong)[] rows = [.. picks.Where(p => p.Wrong.Count > 1)];
        if (rows.Length == 0) return null;
        string[] labels = [.. rows.SelectMany(r => r.Wrong).Distinct().Order(StringComparer.Ordinal)];
        int[][] choices = [.. rows.Select(r => r.Wrong.Select(w => Array.IndexOf(labels, w)).ToArray())];
        int[] sizes = new int[labels.Length], observed = new int[labels.Length], dealt = new int[labels.Length];
        var expected = new double[labels.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            observed[Array.IndexOf(labels, rows[i].Picked)]++;
            foreach (var choice in choices[i])
            {
                sizes[choice]++;
                expected[choice] += 1.0 / choices[i].Length;
            }
        }

        var statistic = Statistic(observed, expected, expected);
        var random = new SeededRandom(seed);
        var reached = 0;
        for (var draw = 0; draw < draws; draw++)
        {
            LongCall.Look();
            Array.Clear(dealt);
            foreach (var choice in choices) dealt[choice[random.NextBelow(choice.Length)]]++;
            if (Statistic(dealt, expected, expected) >= statistic - 1e-9) reached++;
        }

        return new(name, BiasKind.WrongPicks, [.. labels.Select((l, i) => new BiasGroup(l, sizes[i], observed[i], expected[i]))],
            (reached + 1.0) / (draws + 1), draws, seed);
    }

    /// <summary>
    /// The sum of squared distances from what is expected, each over its weight. In a plain loop, because it runs ten thousand times a
    /// check.
    /// </summary>
    private static double Statistic(int[] counts, double[] expected, double[] weights)
    {
        double sum = 0;
        for (var i = 0; i < counts.Length; i++)
        {
            var apart = counts[i] - expected[i];
            sum += apart * apart / weights[i];
        }

        return sum;
    }

    /// <summary>One grouping of the sets, and how often deals by chance were as uneven over it as the answers.</summary>
    private sealed class Grouping
    {
        private readonly string[] labels;
        private readonly int[] group, observed, dealt;
        private readonly double[] sizes, expected;
        private readonly double statistic;

        public Grouping(string[] groups, double share, bool[] right)
        {
            labels = [.. groups.Distinct().Order(StringComparer.Ordinal)];
            group = [.. groups.Select(g => Array.IndexOf(labels, g))];
            (observed, dealt) = (new int[labels.Length], new int[labels.Length]);
            sizes = [.. labels.Select((_, k) => (double)group.Count(g => g == k))];
            expected = [.. sizes.Select(size => share * size)];
            Count(right, observed);
            statistic = Statistic(observed, expected, sizes);
        }

        public int Reached { get; private set; }

        public IReadOnlyList<BiasGroup> Groups =>
            [.. labels.Select((label, k) => new BiasGroup(label, (int)sizes[k], observed[k], expected[k]))];

        public void Deal(bool[] right)
        {
            Count(right, dealt);
            if (Statistic(dealt, expected, sizes) >= statistic - 1e-9) Reached++;
        }

        private void Count(bool[] right, int[] counts)
        {
            Array.Clear(counts);
            for (var i = 0; i < group.Length; i++)
            {
                if (right[i]) counts[group[i]]++;
            }
        }
    }
}
