using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Fisher's tail over every small table, phrases in comments, leanings against the margin, and sentences that were not read yet.
/// </summary>
public class AnswersEdgesTests
{
    [Fact]
    public void Fishers_tail_is_the_hypergeometric_sum_for_every_small_table()
    {
        for (var different = 1; different <= 5; different++)
        for (var alike = 1; alike <= 5; alike++)
        for (var hits = 0; hits <= different; hits++)
        for (var alarms = 0; alarms <= alike; alarms++)
        {
            int total = hits + alarms, n = different + alike;
            var tail = Enumerable.Range(hits, different - hits + 1).Where(x => total - x >= 0 && total - x <= alike)
                .Sum(x => SpecialFunctions.Binomial(different, x) * SpecialFunctions.Binomial(alike, total - x)) / SpecialFunctions
                    .Binomial(n, total);
            Assert.Equal(tail, FisherExact.UpperTail(hits, different, alarms, alike), 1e-12);
        }

        // A tail of many terms, the first of which are not the largest: by the complement.
        var below = Enumerable.Range(0, 30)
            .Sum(x =>
                Math.Exp(SpecialFunctions.BinomialLn(200, x) + SpecialFunctions.BinomialLn(200, 100 - x)
                    - SpecialFunctions.BinomialLn(400, 100)));
        Assert.Equal(1 - below, FisherExact.UpperTail(30, 200, 70, 200), 1e-10);
    }

    [Fact]
    public void A_d_prime_beyond_measure_has_no_error_and_says_so()
    {
        var all = YesNoTest.Of(Protocol.ANotA, 20, 20, 3, 20);
        Assert.True(double.IsPositiveInfinity(all.DPrime));
        Assert.Null(all.StandardError);
        Assert.Contains("; d-prime beyond measure.", all.ToString(), StringComparison.Ordinal);
        Assert.True(double.IsPositiveInfinity(YesNoTest.Of(Protocol.SameDifferent, 12, 20, 0, 20).DPrime));
        Assert.Equal(0, YesNoTest.Of(Protocol.ANotA, 5, 20, 5, 20).DPrime);
        Assert.Null(YesNoTest.Of(Protocol.ANotA, 5, 20, 5, 20).StandardError);
        var some = YesNoTest.Of(Protocol.ANotA, 14, 20, 5, 20);
        Assert.Equal(Normal.InvCDF(0, 1, 0.7) - Normal.InvCDF(0, 1, 0.25), some.DPrime, 1e-9);
        Assert.Contains(FormattableString.Invariant($"; d-prime {some.DPrime:0.00}"), some.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Phrases_count_whole_and_exceptions_do_not_count()
    {
        Descriptor dog = new("wet dog", ["wet dog"]), pine = new("pine", ["pine", "resin"], ["pineapple", "pinewood barrel"]);
        CommentTally Of(params string[] texts) =>
            CommentTally.Of(texts.Select((text, i) => new Comment($"{i}", Side.A, text)), [dog, pine]);
        Assert.Equal([2], Of("wet dog", "a wet doggy note", "wet", "wet cat", "dog wet", "still wet").Counts.Select(count => count.A));
        Assert.Equal([3], Of("pine", "pineapple", "resinous", "pinewood barrel", "pinewood", "pineapples").Counts
            .Select(count => count.A));
        Assert.Equal(4, Of("wet dog", "a wet doggy note", "wet", "wet cat", "dog wet", "still wet").Uncaught.Count);
    }

    /// <summary>
    /// An even count rules a margin out only if as few tasters are steady as the margin allows: here the one stands in the way and there
    /// the other.
    /// </summary>
    [Fact]
    public void The_count_and_steadiness_both_have_to_rule_a_margin_out()
    {
        bool RuledOut(params TasterCount[] counts) =>
            SimilarityTest.Of(ReplicatedTest.Of(Protocol.PairedTwoSided, counts), margin: 0.5).MarginRuledOut;
        Assert.True(RuledOut([.. Enumerable.Repeat(new TasterCount(6, 3), 30)]));
        Assert.False(RuledOut([.. Enumerable.Range(0, 30).Select(i => new TasterCount(6, i % 2 * 6))])); // Even, and everybody steady.
        Assert.False(RuledOut([.. Enumerable.Repeat(new TasterCount(6, 5), 30)])); // Nobody steady, and all lean to one beer.
    }

    [Fact]
    public void A_reading_of_repeats_is_told_by_leanings_and_by_what_is_still_allowed()
    {
        var six = PanelReading.OfRepeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 4), 6)], margin: 0.3);
        Assert.True(six.Difference.DifferenceShown);
        Assert.Contains("a difference is shown at 5 % (p = 0.031; judged by how each taster leans).", six.Difference.ToString(),
            StringComparison.Ordinal);
        TasterCount[] counts = [new(5, 2), new(5, 1), new(5, 3), new(5, 2), new(5, 1), new(5, 2)];
        var reading = PanelReading.OfRepeats(Protocol.Triangle, counts, margin: 0.3).Difference;
        Assert.EndsWith($"it still allows up to {Printed.Percent(reading.Repeats!.StillAllowed(0.05))} discriminators (95 % confidence).",
            reading.ToString(), StringComparison.Ordinal);
        var plain = DifferenceTest.Of(Protocol.PairedTwoSided, 20, 12);
        Assert.EndsWith($"it still allows up to "
            + $"{Printed.Percent(Protocol.PairedTwoSided.Discriminators(ShareIntervals.UpperLimit(12, 20, 0.05)))} discriminators (95 % "
            + $"confidence).", plain.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => BayesReading.Of(Protocol.Triangle, 10, 11, 0.3));
    }

    [Fact]
    public void A_test_that_nearly_always_shows_a_difference_reaches_down_to_nobody() =>
        Assert.Equal(0, PanelReach.Of(Protocol.Triangle, 20, alpha: 0.95, power: 0.5).Detects);
}
