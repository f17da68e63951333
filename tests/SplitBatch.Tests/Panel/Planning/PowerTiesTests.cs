using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>
/// Powers and errors that are met exactly, in fractions that a double holds; and power as the sum over every count that decides.
/// </summary>
public class PowerTiesTests
{
    /// <summary>Five pairs, half of the tasters discriminate: five right show a difference at 1/32, and are seen with (3/4)^5.</summary>
    [Fact]
    public void A_size_that_meets_power_and_alpha_exactly_is_enough()
    {
        const double alpha = 1.0 / 32, power = 243.0 / 1024;
        Assert.Equal(5, Power.TastersNeeded(Protocol.PairedDirectional, alpha, power, 0.5).First);
        Assert.Equal(5, TastersTable.Of(Protocol.PairedDirectional, [alpha], [power], [0.5])[alpha, power, 0.5].First);
        Assert.True(Power.TastersNeeded(Protocol.PairedDirectional, alpha, power * (1 + 1e-10), 0.5).First > 5);
        Assert.True(TastersTable.Of(Protocol.PairedDirectional, [alpha], [power * (1 + 1e-10)], [0.5]).Cells.Single().First > 5);
    }

    /// <summary>Either side: five alike show a difference at 2/32, and are seen with (3/4)^5 + (1/4)^5.</summary>
    [Fact]
    public void A_two_sided_size_that_meets_power_exactly_is_enough()
    {
        const double alpha = 2.0 / 32, power = 244.0 / 1024;
        Assert.Equal(5, Power.TastersNeeded(Protocol.PairedTwoSided, alpha, power, 0.5).First);
        Assert.True(Power.TastersNeeded(Protocol.PairedTwoSided, alpha, power * (1 + 1e-10), 0.5).First > 5);
        Assert.Equal(power, Power.Of(Protocol.PairedTwoSided, 5, alpha, 0.5), 1e-15);
    }

    /// <summary>
    /// Five pairs: three alike or fewer rule out that half discriminate at 376/1024, and guessers give two or three alike 20 times in 32.
    /// </summary>
    [Fact]
    public void A_two_sided_size_that_rules_out_exactly_often_enough_is_enough()
    {
        const double beta = 376.0 / 1024, power = 20.0 / 32;
        Assert.Equal(3, Power.SimilarityCount(Protocol.PairedTwoSided, 5, 0.5, beta));
        Assert.Equal(power, Power.OfSimilarity(Protocol.PairedTwoSided, 5, beta, 0.5), 1e-15);
        Assert.Equal(5, Power.TastersNeededForSimilarity(Protocol.PairedTwoSided, beta, power, 0.5).First);
        Assert.True(Power.TastersNeededForSimilarity(Protocol.PairedTwoSided, beta, power * (1 + 1e-10), 0.5).First > 5);
    }

    /// <summary>A count that is just half of the sets is no majority for either beer, and can be ruled on; fewer cannot occur.</summary>
    [Fact]
    public void A_two_sided_similarity_count_is_never_less_than_half_of_the_sets()
    {
        // Four pairs: two alike have 67/256 at three right in four.
        Assert.Equal(2, Power.SimilarityCount(Protocol.PairedTwoSided, 4, 0.5, 67.0 / 256));
        Assert.Equal(-1, Power.SimilarityCount(Protocol.PairedTwoSided, 4, 0.5, 66.0 / 256));
    }

    [Fact]
    public void Power_is_the_sum_over_the_counts_that_show_a_difference()
    {
        foreach (var protocol in Protocol.All.Where(p => p.HasKnownChance))
        foreach (var n in new[] { 4, 17, 30 })
        {
            double difference = 0, similarity = 0;
            for (var x = 0; x <= n; x++)
            {
                if (DifferenceTest.Of(protocol, n, x).DifferenceShown)
                    difference += ExactBinomial.Exactly(x, n, protocol.CorrectFromDiscriminators(0.4));
                if (SimilarityTest.Of(protocol, n, x, margin: 0.4).MarginRuledOut)
                    similarity += ExactBinomial.Exactly(x, n, protocol.CorrectFromDiscriminators(0.1));
            }

            Assert.Equal(difference, Power.Of(protocol, n, 0.05, 0.4), 1e-12);
            Assert.Equal(similarity, Power.OfSimilarity(protocol, n, 0.05, 0.4, discriminators: 0.1), 1e-12);
        }
    }

    /// <summary>Every end and every side of a tail is the sum of its terms.</summary>
    [Fact]
    public void Tails_next_to_the_mean_and_at_both_ends_are_sums_of_their_terms()
    {
        foreach (var p in new[] { 0, 1e-9, 0.2, 0.5, 0.75, 1 - 1e-9, 1 })
        foreach (var n in new[] { 0, 1, 4, 8 })
        for (var k = -1; k <= n + 1; k++)
        {
            var terms = Enumerable.Range(0, n + 1).Select(x => ExactBinomial.Exactly(x, n, p)).ToArray();
            Assert.Equal(1, terms.Sum(), 1e-14);
            Assert.Equal(terms.Skip(Math.Max(0, k)).Sum(), ExactBinomial.AtLeast(k, n, p), 1e-14);
            Assert.Equal(terms.Take(Math.Max(0, k + 1)).Sum(), ExactBinomial.AtMost(k, n, p), 1e-14);
        }
    }

    /// <summary>
    /// The definition: the smallest count whose upper tail is within alpha, and the largest whose lower tail is within beta, found by
    /// trying all; a tie within rounding (0.1^3 and 0.001) counts.
    /// </summary>
    [Fact]
    public void Critical_counts_are_what_trying_every_count_finds()
    {
        foreach (var p in new[] { 0.1, 1.0 / 3, 0.5, 0.9 })
        foreach (var level in new[] { 0.001, 0.05, 0.3, 0.9 })
        for (var n = 0; n <= 25; n++)
        {
            Assert.Equal(Enumerable.Range(0, n + 2).First(k => ExactBinomial.AtLeast(k, n, p) <= level * (1 + 1e-12)),
                ExactBinomial.CriticalCount(n, p, level));
            Assert.Equal(Enumerable.Range(-1, n + 2).Last(k => ExactBinomial.AtMost(k, n, p) <= level * (1 + 1e-12)),
                ExactBinomial.LargestCount(n, p, level));
        }
    }

    /// <summary>Looking early at a two-sided panel: every sequence of twelve answers, tried.</summary>
    [Fact]
    public void The_price_of_early_looks_is_what_trying_every_sequence_finds()
    {
        foreach (var protocol in new[] { Protocol.PairedTwoSided, Protocol.PairedDirectional })
        {
            int[] looks = [6, 9, 12];
            var caught = Enumerable.Range(0, 1 << 12).Count(answers => looks.Any(n =>
                DifferenceTest.Of(protocol, n, int.PopCount(answers & ((1 << n) - 1)), alpha: 0.1).DifferenceShown));
            Assert.Equal(caught / 4096.0, EarlyLooks.At(protocol, 0.1, looks).TrueAlpha, 1e-12);
        }
    }

    /// <summary>Near nought and one the logarithm's own series says what is left: log(1 - p) = -p - p^2/2 - p^3/3 - ...</summary>
    [Theory]
    [InlineData(1e-12)]
    [InlineData(1e-9)]
    [InlineData(1e-6)]
    public void Chances_next_to_nought_and_one_keep_all_their_digits(double p)
    {
        var series = -p - (p * p / 2) - (p * p * p / 3);
        Near(series, ExactBinomial.LogExactly(0, 1, p));
        Near(7 * series, ExactBinomial.LogExactly(0, 7, p));
        Near(series, ExactBinomial.LogAtMost(0, 1, p));
        Near(p, ExactBinomial.Exactly(1, 1, p));
        Near(p * p * p, ExactBinomial.AtLeast(3, 3, p));
        // Hardly ever none of a hundred at even odds: log(1 - 2^-100).
        Near(-Math.Pow(2, -100), ExactBinomial.LogAtLeast(1, 100, 0.5));
        Near(-Math.Pow(2, -100), ExactBinomial.LogAtMost(99, 100, 0.5));
        // None of n: the upper limit is 1 - tail^(1/n) = y - y^2/2 + y^3/6 - ..., with y = -log(tail)/n.
        foreach (var n in new[] { 1_000_000, 2_000_000_000 })
        {
            var y = -Math.Log(0.05) / n;
            Near(y - (y * y / 2) + (y * y * y / 6), ShareIntervals.UpperLimit(0, n, 0.05));
        }

        Assert.Equal(1, ShareIntervals.UpperLimit(0, 1, double.Epsilon));

        static void Near(double expected, double actual) =>
            Assert.True(Reference.RelativeError(expected, actual) < 1e-13, $"{actual:r} for {expected:r}");
    }

    /// <summary>
    /// Hoeffding (1963): beyond ((sqrt(ln(1/a)/2) + sqrt(ln(1/b)/2)) / (p1 - p0))^2 the power is certain; where both sides must hold,
    /// each may miss half as often.
    /// </summary>
    [Fact]
    public void A_search_goes_as_far_as_hoeffdings_bound()
    {
        double reach = Math.Sqrt(Math.Log(1 / 0.05) / 2), miss = Math.Sqrt(Math.Log(1 / 0.2) / 2), half = Math.Sqrt(Math.Log(1 / 0.1) / 2);
        Assert.Equal((int)Math.Pow((reach + miss) / 0.2, 2) + 1, Sizing.Beyond(new(0.3, 0.5, 0.05, 0.8)));
        Assert.Equal((int)Math.Pow((reach + miss) / 0.2, 2) + 1, Sizing.Beyond(new(0.3, 0.5, 0.05, 0.8, Sizing.Second.Either)));
        Assert.Equal((int)Math.Pow((reach + half) / 0.2, 2) + 1, Sizing.Beyond(new(0.3, 0.5, 0.05, 0.8, Sizing.Second.Both)));
    }

    [Fact]
    public void A_table_follows_its_largest_power_and_ends_with_its_largest_panel()
    {
        var table = TastersTable.Of(Protocol.Triangle, [0.05], [0.2, 0.999], [0.3]);
        foreach (var power in new[] { 0.2, 0.999 })
        {
            var needed = Power.TastersNeeded(Protocol.Triangle, 0.05, power, 0.3);
            Assert.Equal(((int?)needed.First, (int?)needed.Always), (table[0.05, power, 0.3].First, table[0.05, power, 0.3].Always));
        }

        Assert.Throws<ArgumentException>(() => table[0.05, 0.5, 0.3]);
        Assert.Equal(325, TastersTable.Of(Protocol.Triangle, [0.05], [0.8], [0.1], largest: 325).Cells.Single().First);
        Assert.Null(TastersTable.Of(Protocol.Triangle, [0.05], [0.8], [0.1], largest: 324).Cells.Single().First);
    }

    /// <summary>
    /// By trying every count of every size: the size that settles is the first at which each shows a difference or rules the margin out.
    /// </summary>
    [Fact]
    public void The_size_that_settles_a_pair_is_what_trying_every_count_finds()
    {
        foreach (var protocol in new[] { Protocol.PairedDirectional, Protocol.PairedTwoSided })
        {
            var size = Power.TastersThatSettle(protocol, alpha: 0.1, margin: 0.6, beta: 0.08);
            Assert.Equal((Aim.Either, 0.1, 0.92, 0.6), (size.Aim, size.Error, size.Power, size.Discriminators));
            Assert.Equal(size.First, Enumerable.Range(1, 200).First(Answered));
            for (var n = size.Always; n < size.Always + 20; n++) Assert.True(Answered(n));
            Assert.False(Answered(size.Always - 1));

            bool Answered(int n) => Enumerable.Range(0, n + 1)
                .All(x => PanelReading.Of(protocol, n, x, margin: 0.6, alpha: 0.1, beta: 0.08).Answer != PanelAnswer.Inconclusive);
        }
    }
}
