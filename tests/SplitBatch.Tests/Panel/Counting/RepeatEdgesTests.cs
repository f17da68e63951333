using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Protocols;
using BetaBinomial = SplitBatch.Numbers.BetaBinomial;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Repeats by the same people: limits are where the exact chances say, tests and limits agree, and one person is never many.
/// </summary>
public class RepeatEdgesTests
{
    private static readonly TasterCount[] Mixed = [new(5, 5), new(5, 4), new(5, 1), new(5, 2), new(5, 4), new(5, 1), new(5, 3)];

    private static ReplicatedTest Triangle(params TasterCount[] counts) => ReplicatedTest.Of(Protocol.Triangle, counts);

    private static ReplicatedTest Pair(params TasterCount[] counts) => ReplicatedTest.Of(Protocol.PairedTwoSided, counts);

    [Fact]
    public void One_person_with_repeats_allows_everything_and_with_one_set_what_one_answer_says()
    {
        foreach (var alone in new[] { Triangle(new TasterCount(8, 2)), Pair(new TasterCount(8, 4)) })
        {
            Assert.Equal(1, alone.StillAllowed());
            Assert.Equal(new Interval(0, 1, 0.9), alone.DiscriminatorsInterval(0.9));
            Assert.False(SimilarityTest.Of(alone, 0.3).LargeEnough && SimilarityTest.Of(alone, 0.3).MarginRuledOut);
            Assert.StartsWith("8 sets were tasted by 1 person.", alone.Warning, StringComparison.Ordinal);
            Assert.EndsWith("the sets are worth between 1 and 8 tasters.", alone.Warning, StringComparison.Ordinal);
        }

        // One wrong answer is read like the right one that guessing gives on average: nothing is excluded.
        Assert.Equal(1, Triangle(new TasterCount(1, 0)).StillAllowed(0.05));
        Assert.Null(Triangle(new TasterCount(1, 0)).Warning);
    }

    /// <summary>
    /// By trying every number of able people: so many are always right, the others guess; and by the binomial for people who are all
    /// alike.
    /// </summary>
    [Fact]
    public void Limits_lie_where_so_few_or_so_many_become_rare()
    {
        var test = Triangle(Mixed);
        var right = Mixed.Sum(taster => taster.Correct);
        var interval = test.DiscriminatorsInterval(0.95);
        Assert.Equal(0.025, Enumerable.Range(0, 8)
            .Sum(able => Binomial.PMF(interval.High, 7, able) * Below(right - (5 * able), 35 - (5 * able))), 1e-9);
        Assert.Equal(0.025,
            1 - Enumerable.Range(0, 8).Sum(able => Binomial.PMF(interval.Low, 7, able) * Below(right - 1 - (5 * able), 35 - (5 * able))),
            1e-9);
        Assert.Equal(interval.High, test.StillAllowed(0.025), 1e-9);

        TasterCount[] once = [.. Enumerable.Range(0, 20).Select(i => new TasterCount(1, i < 12 ? 1 : 0))];
        Assert.Equal(CountLimit.Discriminators(Protocol.Triangle, 20, 12, 0.025), Triangle(once).StillAllowed(0.025), 1e-9);

        static double Below(int right, int sets) => right < 0 ? 0 : sets == 0 ? 1 : Binomial.CDF(1 / 3.0, sets, right);
    }

    [Fact]
    public void Guessers_have_no_lower_limit_and_from_few_people_no_upper_one_follows()
    {
        Assert.Equal(0, Triangle(new(6, 2), new(6, 2), new(6, 1), new(6, 3)).DiscriminatorsInterval().Low);
        Assert.Equal(1, Triangle(new(6, 2), new(6, 2), new(6, 1), new(6, 3)).StillAllowed());
        Assert.Equal(1, Triangle(new(6, 6), new(6, 6), new(6, 6)).StillAllowed());
        Assert.InRange(Triangle([.. Enumerable.Repeat(new TasterCount(6, 2), 6)]).StillAllowed(), 0.3, 0.7);
    }

    /// <summary>A two-sided protocol: the count is that of the more frequent beer, and steady tasters count as well.</summary>
    [Fact]
    public void Two_sided_limits_answer_to_the_count_and_to_steadiness()
    {
        TasterCount[] leaning = [new(4, 4), new(4, 3), new(4, 4), new(4, 3), new(4, 2), new(4, 3), new(4, 4), new(4, 3)];
        var test = Pair(leaning);
        Assert.InRange(test.DiscriminatorsInterval(0.9).Low, 0.05, 0.7);
        Assert.True(test.DifferenceShown);
        Assert.Equal(PeopleMargin.Limit(PersonSets.Alike(8, 4, 0.5), 26, 0.05)!.Value, test.StillAllowed(0.05), 1e-12);

        TasterCount[] apart = [.. Enumerable.Range(0, 12).Select(i => new TasterCount(4, i % 3 == 0 ? 2 : i % 2 * 4))];
        Assert.Equal(new Leanings(apart).SteadyAllowed(0.05), Pair(apart).StillAllowed(0.05), 1e-12);
        Assert.True(PeopleMargin.Limit(PersonSets.Alike(12, 4, 0.5), 24, 0.05) < Pair(apart).StillAllowed(0.05));

        TasterCount[] guessing = [new(4, 2), new(4, 2), new(4, 1), new(4, 3), new(4, 2), new(4, 2), new(4, 3), new(4, 1)];
        Assert.Equal(0, Pair(guessing).DiscriminatorsInterval().Low);
        Assert.False(Pair(guessing).DifferenceShown);
    }

    [Fact]
    public void A_leaning_is_shown_taster_by_taster_and_not_by_the_pooled_count()
    {
        var six = Pair([.. Enumerable.Repeat(new TasterCount(4, 4), 6)]);
        Assert.Equal(2 / 64.0, six.PValue, 1e-12);
        Assert.True(six.DifferenceShown);
        Assert.False(six.LeanApart);
        Assert.StartsWith("24 alike of 24 sets by 6 tasters (paired two-sided): a difference is shown (p = 0.031).", six.ToString(),
            StringComparison.Ordinal);
        var five = Pair([.. Enumerable.Repeat(new TasterCount(4, 4), 5)]);
        Assert.Equal(2 / 32.0, five.PValue, 1e-12);
        Assert.False(five.DifferenceShown);
        Assert.True(five.Pooled.DifferenceShown);
        Assert.Contains("no difference shown, which does not mean the same (p = 0.063).", five.ToString(), StringComparison.Ordinal);

        var apart = Triangle([.. Enumerable.Range(0, 12).Select(i => new TasterCount(6, i % 2 * 6))]);
        Assert.True(apart.Plain.PValue < 0.05);
        Assert.False(apart.LeanApart);
        Assert.Equal(apart.Pooled.DifferenceShown, apart.DifferenceShown);
        Assert.StartsWith("36 right of 72 sets by 12 tasters (triangle): a difference is shown", apart.ToString(),
            StringComparison.Ordinal);
        Assert.Contains(" Tasters differ (p ", apart.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("lean to different", apart.ToString(), StringComparison.Ordinal);
        var even = Triangle([.. Enumerable.Repeat(new TasterCount(6, 2), 12)]);
        Assert.Contains("24 right of 72 sets by 12 tasters (triangle): no difference shown, which does not mean the same (p ",
            even.ToString(), StringComparison.Ordinal);
        Assert.Contains($" No sign that tasters differ ({Printed.PValue(1)}). ", even.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Sets over the design effect; the lower end where the overdispersion's profile has fallen by half of z squared.</summary>
    [Fact]
    public void What_repeats_are_worth_follows_from_the_overdispersion_and_its_limit()
    {
        var test = Triangle(Mixed);
        var worth = test.WorthTasters;
        Assert.Equal(35 / (1 + (4 * test.Plain.Model.Overdispersion)), worth.High, 1e-9);
        Assert.InRange(worth.Low, 7.01, worth.High - 1);
        var overdispersion = ((35 / worth.Low) - 1) / 4;
        var z = Normal.InvCDF(0, 1, 0.95);
        Assert.Equal(test.Plain.LogLikelihood - (z * z / 2),
            new BetaBinomialLikelihood(Mixed, 0).ProfileOfTheta(overdispersion / (1 - overdispersion)), 1e-6);
        Assert.Contains(FormattableString.Invariant($"the sets are worth between {worth.Low:0} and {worth.High:0} tasters."), test.Warning,
            StringComparison.Ordinal);
        Assert.Contains("35 sets were tasted by 7 people. That is not 35 tasters", test.Warning, StringComparison.Ordinal);

        var opposed = Triangle(new(9, 9), new(9, 0), new(9, 9), new(9, 0));
        Assert.Equal(4, opposed.WorthTasters.Low, 1e-3);
        Assert.EndsWith("the sets are worth about 4 tasters.", opposed.Warning, StringComparison.Ordinal);
        var two = Triangle(new(9, 5), new(9, 5)).WorthTasters;
        Assert.Equal(18, two.High, 1e-9);
        Assert.InRange(two.Low, 2, 10);
        Assert.Equal(5, test.SetsPerTaster);
        Assert.Equal(Math.Sqrt(test.Plain.Model.Mean * (1 - test.Plain.Model.Mean) * (1 + (4 * test.Plain.Model.Overdispersion)) / 35),
            test.StandardError, 1e-12);
    }

    [Fact]
    public void The_spread_is_tabled_where_all_had_as_many_sets()
    {
        var rows = Triangle(new(2, 0), new(2, 1), new(2, 2), new(2, 1)).Spread;
        Assert.Equal([(0, 1), (1, 2), (2, 1)], rows.Select(row => (row.Correct, row.Observed)));
        Assert.Equal([4 * 4 / 9.0, 4 * 4 / 9.0, 4 / 9.0], rows.Select(row => Math.Round(row.ByGuessing, 12)),
            (x, y) => Math.Abs(x - y) < 1e-9);
        Assert.Equal(4, rows.Sum(row => row.Fitted), 1e-6);
        Assert.Empty(Triangle(new(2, 0), new(2, 1), new(3, 2)).Spread);
        Assert.Empty(Triangle(new(3, 0), new(2, 1), new(2, 2)).Spread);
    }

    /// <summary>
    /// By trying all outcomes: who is steady by ability or by luck, with 2, 3 and 4 sets; somebody with one set says nothing.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(0.7)]
    public void The_chance_of_few_steady_tasters_is_that_of_all_outcomes(double share)
    {
        TasterCount[] counts = [new(2, 2), new(3, 1), new(1, 1), new(4, 2)];
        var leanings = new Leanings(counts);
        Assert.Equal(1, leanings.Steady);
        // Everybody names his own beer with the chance (1 + s)/2, whichever it is: of all spreads of ability the least steady.
        double[] steady = [.. new[] { 2, 3, 4 }.Select(sets => Math.Pow((1 + share) / 2, sets) + Math.Pow((1 - share) / 2, sets))];
        var expected = Enumerable.Range(0, 8).Where(mask => System.Numerics.BitOperations.PopCount((uint)mask) <= 1)
            .Sum(mask => steady.Select((p, i) => (mask >> i & 1) == 1 ? p : 1 - p).Aggregate((x, y) => x * y));
        Assert.Equal(expected, leanings.ChanceOfSoFewSteady(share), 1e-12);
    }

    [Fact]
    public void The_share_of_steady_tasters_still_allowed_is_where_so_few_become_rare()
    {
        var leanings = new Leanings([new(4, 4), new(4, 2), new(4, 1), new(4, 3), new(4, 2)]);
        Assert.Equal(0.05, leanings.ChanceOfSoFewSteady(leanings.SteadyAllowed(0.05)), 1e-9);
        Assert.Equal(0, new Leanings([new(1, 1), new(1, 0)]).SteadyAllowed(0.05));
        Assert.Equal(1, new Leanings([new(3, 3), new(3, 0)]).SteadyAllowed(0.05));
        // Twenty people of two sets, none steady: by luck alone that happens once in a million.
        Assert.Equal(0, new Leanings([.. Enumerable.Repeat(new TasterCount(2, 1), 20)]).SteadyAllowed(0.05));
        Assert.Equal(Math.Pow(0.5, 20), new Leanings([.. Enumerable.Repeat(new TasterCount(2, 1), 20)]).ChanceOfSoFewSteady(0), 1e-12);
    }

    [Fact]
    public void A_fit_says_whether_it_could_tell_the_spread()
    {
        Assert.True(BetaBinomialFit.Of(Mixed).OverdispersionIdentified);
        Assert.True(BetaBinomialFit.Of([.. Enumerable.Repeat(new TasterCount(6, 3), 5)]).OverdispersionIdentified);
        foreach (TasterCount[] silent in new TasterCount[][] { [new(1, 1), new(1, 0)], [new(8, 4)], [new(4, 4), new(4, 4)] })
        {
            Assert.False(BetaBinomialFit.Of(silent).OverdispersionIdentified);
            Assert.EndsWith("; how tasters differ cannot be told from these counts", BetaBinomialFit.Of(silent).ToString(),
                StringComparison.Ordinal);
        }

        Assert.StartsWith("share right ", BetaBinomialFit.Of(Mixed).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("share of ability above guessing ", BetaBinomialFit.Of(Mixed, 1 / 3.0).ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Triangle(new TasterCount(3, 4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Triangle(new TasterCount(3, -1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BetaBinomialFit.Of([new(3, 4), new(3, 1)]));
    }

    /// <summary>Where people differ, the maximum is one: no neighbour is more likely, at small and large spreads.</summary>
    [Fact]
    public void The_fitted_maximum_is_higher_than_its_neighbours()
    {
        TasterCount[][] panels = [Mixed, [new(8, 8), new(8, 0), new(8, 7), new(8, 1)], [new(20, 11), new(20, 9), new(20, 14), new(20, 6)],
            [new(3, 3), new(9, 2), new(4, 4), new(7, 1), new(2, 0)]];
        foreach (var counts in panels)
        foreach (var chance in new[] { 0.0, 1 / 3.0 })
        {
            var fit = BetaBinomialFit.Of(counts, chance);
            if (fit.Model.Overdispersion == 0) continue;
            double mean = fit.Model.Mean, theta = fit.Model.Overdispersion / (1 - fit.Model.Overdispersion);
            double Log(double m, double t) => counts.Sum(c => new BetaBinomial(m, t / (1 + t), chance).LogProbability(c.Correct, c.Sets));
            Assert.Equal(fit.LogLikelihood, Log(mean, theta), 1e-9);
            foreach (var (m, t) in new[] { (1.001, 1.0), (0.999, 1.0), (1.0, 1.001), (1.0, 0.999) })
            {
                if (mean * m < 1) Assert.True(Log(mean * m, theta * t) <= fit.LogLikelihood + 1e-9);
            }
        }
    }

    [Fact]
    public void A_panel_with_one_set_each_is_no_panel_with_repeats()
    {
        TasterCount[] once = [.. Enumerable.Range(0, 18).Select(i => new TasterCount(1, i < 8 ? 1 : 0))];
        var reading = PanelReading.OfRepeats(Protocol.Triangle, once, margin: 0.4);
        Assert.Null(reading.Similarity.Repeats);
        Assert.Equal(SimilarityTest.Of(Protocol.Triangle, 18, 8, 0.4).ToString(), reading.Similarity.ToString());
        Assert.Contains("or fewer would have done)", SimilarityTest.Of(Protocol.Triangle, 20, 12, 0.4).ToString(),
            StringComparison.Ordinal);
        Assert.DoesNotContain("would have done", PanelReading.OfRepeats(Protocol.Triangle, Mixed, 0.4).Similarity.ToString(),
            StringComparison.Ordinal);
    }
}
