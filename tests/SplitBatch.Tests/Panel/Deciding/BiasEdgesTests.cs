using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Deciding;

/// <summary>The chance of uneven groups by trying every deal, what is grouped by what, and how it is told.</summary>
public class BiasEdgesTests
{
    /// <summary>Groups of 2, 3 and 5 sets, 4 of 10 right: all 210 ways to deal the right answers, each statistic by hand.</summary>
    [Theory]
    [InlineData(2, 2, 0)]
    [InlineData(0, 0, 4)]
    [InlineData(2, 0, 2)]
    [InlineData(1, 1, 2)]
    public void Dealing_at_random_finds_the_chance_over_all_deals(int first, int second, int third)
    {
        int[] sizes = [2, 3, 5], observed = [first, second, third];
        var sets = sizes.SelectMany((size, g) => Enumerable.Range(0, size).Select(i => ($"{"abc"[g]}", i < observed[g]))).ToArray();
        double Statistic(int[] counts) => counts.Select((c, i) => Math.Pow(c - (0.4 * sizes[i]), 2) / sizes[i]).Sum();
        var reached = Enumerable.Range(0, 1 << 10).Where(mask => int.PopCount(mask) == 4)
            .Select(mask => new[] { int.PopCount(mask & 3), int.PopCount(mask >> 2 & 7), int.PopCount(mask >> 5) })
            .Count(counts => Statistic(counts) >= Statistic(observed) - 1e-9);
        var check = BiasCheck.OfRightAnswers("group", sets, seed: 3, draws: 40_000);
        Assert.Equal(reached / 210.0, check.PValue, 0.01);
        Assert.Equal([0.8, 1.2, 2.0], check.Groups.Select(group => Math.Round(group.Expected, 12)));
        Assert.Equal(sizes, check.Groups.Select(group => group.Sets));
    }

    /// <summary>Two picks out of {a, b}, three out of {a, b, c}, one out of {b, c, d, e}: all 4 · 27 · 4 deals.</summary>
    [Theory]
    [InlineData("aa", "aaa", "b")]
    [InlineData("ab", "abc", "e")]
    [InlineData("bb", "ccc", "e")]
    public void Dealing_wrong_picks_finds_the_chance_over_all_deals(string two, string three, string four)
    {
        string[] from = ["ab", "ab", "abc", "abc", "abc", "bcde"];
        var picked = two + three + four;
        double[] expected = [2, 2.25, 1.25, 0.25, 0.25];
        double Statistic(string deal) =>
            "abcde".Select((place, i) => Math.Pow(deal.Count(c => c == place) - expected[i], 2) / expected[i]).Sum();
        var deals =
            from.Aggregate(new[] { "" }.AsEnumerable(), (all, places) => all.SelectMany(deal => places.Select(place => deal + place)))
                .ToArray();
        Assert.Equal(432, deals.Length);
        var picks = picked.Select((c, i) => ($"{c}", (IReadOnlyList<string>)[.. from[i].Select(place => $"{place}")]))
            .Append(("f", ["f"]));
        var check = BiasCheck.OfWrongPicks("place", picks, seed: 3, draws: 40_000)!;
        Assert.Equal(deals.Count(deal => Statistic(deal) >= Statistic(picked) - 1e-9) / 432.0, check.PValue, 0.01);
        Assert.Equal(expected, check.Groups.Select(group => Math.Round(group.Expected, 12)));
        Assert.Equal([5, 6, 4, 1, 1], check.Groups.Select(group => group.Sets));
        Assert.Equal("abcde", string.Concat(check.Groups.Select(group => group.Label)));
    }

    [Fact]
    public void What_cannot_be_checked_is_refused_or_left_out()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BiasCheck.OfRightAnswers("x", [("a", true)], 1, draws: 98));
        Assert.Throws<ArgumentOutOfRangeException>(() => BiasCheck.OfWrongPicks("x", [("a", ["a", "b"])], 1, draws: 98));
        Assert.Equal("There are no sets to check.",
            Assert.Throws<ArgumentException>(() => BiasCheck.OfRightAnswers("x", [], 1)).Message.Split(" (")[0]);
        Assert.Null(BiasCheck.OfWrongPicks("x", [("a", ["a"])], 1));
    }

    [Fact]
    public void A_check_is_told_with_its_kind_its_chance_and_its_correction()
    {
        BiasCheck right = new("session", BiasKind.RightAnswers, [new("one", 8, 5, 4), new("two", 8, 3, 4)], 0.02, 9999, 1);
        Assert.Equal("right answers by session: one 5 of 8, two 3 of 8; a bias is shown (p = 0.020)", right.ToString());
        Assert.Equal("right answers by session: one 5 of 8, two 3 of 8; no bias shown (p = 0.020, corrected p = 0.120), which does not "
            + "rule one out", (right with { AdjustedPValue = 0.12 }).ToString());
        Assert.StartsWith("wrong picks by session: ", (right with { Kind = BiasKind.WrongPicks }).ToString(), StringComparison.Ordinal);
        Assert.True((right with { AdjustedPValue = 0.05 }).BiasShown);
        Assert.False((right with { AdjustedPValue = 0.0501 }).BiasShown);
    }

    private static string[] Checks(Protocol protocol, ServingOptions options, Func<ServedSet, IEnumerable<Cup>> answer)
    {
        var plan = ServingPlan.Balanced(protocol, 12, seed: 3, options);
        var scored = plan.Score(plan.Sets
            .Select(set => new Ballot(set.Taster, string.Join(" ", answer(set).Select(cup => cup.Code))) { Set = set.Number }));
        return [.. BiasReport.Of(scored, draws: 99).Checks
            .Select(check => $"{check.Name}: {string.Join(" ", check.Groups.Select(group => group.Label))}")];
    }

    [Fact]
    public void Each_protocol_is_checked_by_what_differs_among_its_sets()
    {
        ServingOptions options = new() { Sessions = 2, Servers = 2, Replicates = 2 };
        Assert.Equal(
            ["serving order: AAB ABA ABB BAA BAB BBA", "session: session 1 session 2", "server: S1 S2", "repeat: set 1 set 2",
                "beer that was the odd one: A B", "position of the odd cup: 1st 2nd 3rd", "position: 1st 2nd 3rd",
                "code (lowest to highest of the set): 1st 2nd 3rd"],
            Checks(Protocol.Triangle, options, set => [set.CodedCups.First()]));
        Assert.Equal(
            ["serving order: A:AB A:BA B:AB B:BA", "beer that was the reference: A B", "position of the first cup of A: 1st 2nd"],
            Checks(Protocol.DuoTrio, new(), set => [set.CodedCups.First()]));
        Assert.Equal(
            ["serving order: AABB ABAB ABBA BAAB BABA BBAA", "position of the first cup of A: 1st 2nd 3rd"],
            Checks(Protocol.Tetrad, new(), set => set.CodedCups.Take(2)));
    }

    /// <summary>Who picks the highest code is found by code and told by its place in the set's codes.</summary>
    [Fact]
    public void Codes_are_ranked_within_their_set()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 60, seed: 5);
        var report =
            BiasReport.Of(
                plan.Score(
                    plan.Sets
                        .Select(set => new Ballot(set.Taster, set.CodedCups.MaxBy(cup => cup.Code, StringComparer.Ordinal)!.Code)
                        {
                            Set = set.Number,
                        })));
        var check = report.Checks.Single(check => check.Name.StartsWith("code", StringComparison.Ordinal));
        Assert.True(check.BiasShown);
        Assert.Equal(0, check.Groups[0].Count);
        Assert.Equal(check.Groups.Sum(group => group.Count), check.Groups[1].Count + check.Groups[2].Count);
        Assert.True(check.Groups[2].Count > check.Groups[1].Count);
        Assert.Equal("8 checks for bias: none shown, which does not rule one out in a panel of this size.",
            new BiasReport([.. Enumerable.Repeat(check with { AdjustedPValue = 1 }, 8)]).ToString());
    }
}
