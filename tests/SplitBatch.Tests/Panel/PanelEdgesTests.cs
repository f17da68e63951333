using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel;

/// <summary>Intervals by their definitions, readings at their limits, and combined panels against the single panel they equal.</summary>
public class PanelEdgesTests
{
    /// <summary>The 95 % point of chi-square with one degree of freedom (printed tables: 3.841; further digits with R's qchisq).</summary>
    private const double ChiSquare95 = 3.841458820694124;

    /// <summary>
    /// At each end of a likelihood interval twice the log likelihood is 3.841 below its top; where guessing itself is not so far below,
    /// the end is guessing.
    /// </summary>
    [Theory]
    [InlineData("triangle", 20, 11)]
    [InlineData("triangle", 18, 8)]
    [InlineData("duo-trio", 40, 29)]
    [InlineData("3-AFC", 30, 29)]
    [InlineData("triangle", 30, 30)]
    [InlineData("triangle", 30, 4)]
    public void The_likelihood_interval_of_d_prime_ends_where_its_definition_says(string name, int n, int x)
    {
        var protocol = Protocol.Parse(name);
        var estimate = DPrimeEstimate.Of(protocol, n, x);
        var (low, high) = (estimate.LikelihoodInterval!.Value.Low, estimate.LikelihoodInterval!.Value.High);
        var top = Log(Math.Max(protocol.Chance, (double)x / n));
        if (low > 0) Assert.Equal(ChiSquare95, 2 * (top - Log(protocol.CorrectShare(low))), 1e-6);
        else Assert.True(2 * (top - Log(protocol.Chance)) <= ChiSquare95);
        if (double.IsFinite(high)) Assert.Equal(ChiSquare95, 2 * (top - Log(protocol.CorrectShare(high))), 1e-6);
        else Assert.Equal(n, x);
        Assert.InRange(estimate.Value, low, high);

        double Log(double p) => (x == 0 ? 0 : x * Math.Log(p)) + (x == n ? 0 : (n - x) * Math.Log(1 - p));
    }

    [Fact]
    public void A_standard_error_needs_a_slope_and_a_spread()
    {
        Assert.Null(DPrimeEstimate.Of(Protocol.Triangle, 30, 9).StandardError);
        Assert.Null(DPrimeEstimate.Of(Protocol.Triangle, 30, 30).StandardError);
        var share = 20.0 / 30;
        var estimate = DPrimeEstimate.Of(Protocol.PairedDirectional, 30, 20);
        // d' = sqrt 2 times the normal quantile, so the slope is the normal density over sqrt 2.
        var z = estimate.Value / Math.Sqrt(2);
        Assert.Equal(Math.Sqrt(share * (1 - share) / 30) * Math.Sqrt(2) / (Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI)),
            estimate.StandardError!.Value, 1e-9);
    }

    /// <summary>
    /// Clopper and Pearson's limits are the shares at which the count is just in the tail; Wilson's are those whose score is z.
    /// </summary>
    [Fact]
    public void Limits_of_a_share_solve_the_equations_they_are_defined_by()
    {
        const double z = 1.6448536269514722;
        foreach (var n in new[] { 1, 5, 20, 300 })
        for (var x = 0; x <= n; x += Math.Max(1, n / 5))
        {
            var exact = ShareIntervals.ClopperPearson(x, n, 0.90);
            if (x > 0) Assert.Equal(0.05, ExactBinomial.AtLeast(x, n, exact.Low), 1e-9);
            else Assert.Equal(0, exact.Low);
            if (x < n) Assert.Equal(0.05, ExactBinomial.AtMost(x, n, exact.High), 1e-9);
            else Assert.Equal(1, exact.High);
            var score = ShareIntervals.Wilson(x, n, 0.90);
            if (x > 0) Assert.Equal(z, ((double)x / n - score.Low) / Math.Sqrt(score.Low * (1 - score.Low) / n), 1e-7);
            else Assert.Equal(0, score.Low);
            if (x < n) Assert.Equal(z, (score.High - (double)x / n) / Math.Sqrt(score.High * (1 - score.High) / n), 1e-7);
            else Assert.Equal(1, score.High);
            // Beta(x + 1/2, n - x + 1/2) turned round is the interval of the failures.
            Interval bayes = ShareIntervals.Jeffreys(x, n, 0.90), turned = ShareIntervals.Jeffreys(n - x, n, 0.90);
            Assert.Equal(1 - turned.High, bayes.Low, 1e-9);
            Assert.Equal(1 - turned.Low, bayes.High, 1e-9);
        }
    }

    [Fact]
    public void A_beta_quantile_has_nothing_below_nought_and_all_below_one()
    {
        Assert.Equal(0, ShareIntervals.BetaQuantile(0, 2, 3));
        Assert.Equal(1, ShareIntervals.BetaQuantile(1, 2, 3));
        // Beta(1, 1) is uniform, Beta(2, 1) has the distribution x squared.
        Assert.Equal(0.3, ShareIntervals.BetaQuantile(0.3, 1, 1), 1e-10);
        Assert.Equal(Math.Sqrt(0.3), ShareIntervals.BetaQuantile(0.3, 2, 1), 1e-10);
        Assert.Equal(Math.Sqrt(0.9), ShareIntervals.BetaQuantile(0.9, 2, 1), 1e-10);
    }

    /// <summary>One panel combined with nothing is that panel, also where nobody, as many as by guessing, or everybody is right.</summary>
    [Theory]
    [InlineData(30, 0)]
    [InlineData(30, 3)]
    [InlineData(30, 10)]
    [InlineData(30, 24)]
    [InlineData(30, 30)]
    [InlineData(3, 3)]
    public void One_panel_combined_is_that_panel_at_every_count(int n, int x)
    {
        var one = Forest.Of([new("a", Protocol.Triangle, n, x)], level: 0.9).Combine();
        var test = DifferenceTest.Of(Protocol.Triangle, n, x, level: 0.9);
        Assert.Equal(test.PValue, one.PValue, 1e-12);
        Assert.Equal(test.DPrime.Value, one.DPrime, 1e-5);
        Assert.Equal(test.DPrime.Interval.Low, one.Interval.Low, 1e-5);
        Assert.Equal(test.DPrime.Interval.High, one.Interval.High, 1e-5);
        Assert.Equal(0.9, one.Interval.Level);
        // A search ends at a d-prime of 12, where a right answer is not quite certain.
        Assert.Equal(0, one.Heterogeneity, 1e-4);
    }

    [Fact]
    public void Panels_with_repeats_stand_beside_the_others_and_are_not_added_to_them()
    {
        PanelCount repeated = new("b", Protocol.Triangle, 24, 12) { Repeats = [.. Enumerable.Repeat(new TasterCount(4, 2), 6)] };
        var forest = Forest.Of([new("a", Protocol.Triangle, 20, 9), repeated], level: 0.8);
        Assert.Null(forest.Rows[0].Test.Repeats);
        Assert.Equal(6, forest.Rows[1].Test.Repeats!.Tasters);
        Assert.Equal(0.8, forest.Rows[1].Test.Level);
        Assert.Contains("\"b\" holds repeats", Assert.Throws<ArgumentException>(forest.Combine).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60, 35, true, false)]
    [InlineData(300, 120, true, true)]
    [InlineData(60, 20, false, true)]
    [InlineData(18, 8, false, false)]
    public void A_reading_says_what_its_two_tests_say(int n, int x, bool shown, bool ruledOut)
    {
        var reading = PanelReading.Of(Protocol.Triangle, n, x, margin: 0.3);
        Assert.Equal((shown, ruledOut), (reading.Difference.DifferenceShown, reading.Similarity.MarginRuledOut));
        var text = reading.ToString();
        Assert.StartsWith($"{x} right of {n}", text, StringComparison.Ordinal);
        Assert.Equal(shown, text.Contains("a difference is shown", StringComparison.Ordinal));
        Assert.Equal(ruledOut, text.Contains("30 % or more discriminators are ruled out", StringComparison.Ordinal));
        Assert.Equal(!shown && !ruledOut,
            text.Contains("That does not mean the same. 73 tasters would settle it", StringComparison.Ordinal));
        Assert.Equal(shown, reading.Difference.ToString().Contains(": a difference is shown at 5 %", StringComparison.Ordinal));
        Assert.Equal(ruledOut, reading.Similarity.ToString().Contains("are ruled out at 5 %", StringComparison.Ordinal));
        Assert.DoesNotContain("right of", PanelReading.Of(Protocol.PairedTwoSided, 18, 8, 0.3).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("10 alike of 18", PanelReading.Of(Protocol.PairedTwoSided, 18, 8, 0.3).ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// The limit in a sentence about no difference is the one-sided one that a similarity test at the same error gives, halved for two
    /// sides.
    /// </summary>
    [Fact]
    public void What_a_count_still_allows_is_the_one_sided_exact_limit()
    {
        Assert.Contains($"up to {Allowed(Protocol.Triangle, 8, 0.05)} discriminators",
            DifferenceTest.Of(Protocol.Triangle, 18, 8).ToString(), StringComparison.Ordinal);
        Assert.Contains($"up to {Allowed(Protocol.PairedTwoSided, 10, 0.05)} discriminators",
            DifferenceTest.Of(Protocol.PairedTwoSided, 18, 8).ToString(), StringComparison.Ordinal);
        Assert.Equal(Power.Of(Protocol.Triangle, 18, 0.05, 0), DifferenceTest.Of(Protocol.Triangle, 18, 8).TrueAlpha);
        Assert.Equal(10 / 18.0, DifferenceTest.Of(Protocol.PairedTwoSided, 18, 8).CorrectShare);

        static string Allowed(Protocol protocol, int count, double tail) =>
            Printed.Percent(protocol.Discriminators(ShareIntervals.UpperLimit(count, 18, tail)));
    }

    /// <summary>ISO 4120's note on limits, by hand for 14 right of 36: (x/n - 1/3) / (2/3) + z sqrt((n x - x^2) / n^3) / (2/3).</summary>
    [Fact]
    public void The_normal_approximation_is_the_standards() => Assert.Equal(
        ((14.0 / 36 - 1.0 / 3) * 1.5) + (1.6448536269514722 * Math.Sqrt(((36.0 * 14) - (14 * 14)) / Math.Pow(36, 3)) * 1.5),
        SimilarityTest.Of(Protocol.Triangle, 36, 14, 0.3).StillAllowedByNormalApproximation, 1e-12);

    /// <summary>A largest count that is just what guessing gives on average is large enough (ISO 4120, 8.2: not below).</summary>
    [Fact]
    public void A_largest_count_at_the_guessers_average_is_large_enough()
    {
        // Four pairs: two right at most at 67/256 against three in four; guessers give two on average.
        Assert.True(SimilarityTest.Of(Protocol.PairedDirectional, 4, 2, margin: 0.5, beta: 67.0 / 256).LargeEnough);
        Assert.True(SimilarityTest.Of(Protocol.PairedDirectional, 4, 2, margin: 0.5, beta: 67.0 / 256).MarginRuledOut);
        Assert.False(SimilarityTest.Of(Protocol.PairedDirectional, 4, 3, margin: 0.5, beta: 67.0 / 256).MarginRuledOut);
        Assert.False(SimilarityTest.Of(Protocol.PairedDirectional, 4, 1, margin: 0.5, beta: 66.0 / 256).MarginRuledOut);
    }

    /// <summary>Wilcoxon's exact distribution by trying every sign, ties and zeros included.</summary>
    [Fact]
    public void Signed_ranks_equal_trying_every_sign()
    {
        double[] differences = [2, -1, 0, 3, 3, -2, 5, 0, 1, -3, 4];
        double[] sizes = [.. differences.Where(d => d != 0).Select(Math.Abs)];
        double[] ranks = [.. sizes.Select(size => sizes.Count(other => other < size) + ((sizes.Count(other => other == size) + 1) / 2.0))];
        var observed = differences.Where(d => d != 0).Select((d, i) => d > 0 ? ranks[i] : 0).Sum();
        var sums = Enumerable.Range(0, 1 << ranks.Length).Select(signs => ranks.Where((_, i) => (signs >> i & 1) == 1).Sum()).ToArray();
        var p = 2.0 * Math.Min(sums.Count(s => s <= observed), sums.Count(s => s >= observed)) / sums.Length;
        var test = SignedRanks.Of(differences);
        Assert.Equal((9, 2, observed), (test.Used, test.Zeros, test.RankSum));
        Assert.Equal(p, test.PValue, 1e-12);
        Assert.Equal(new SignedRanks(0, 3, 0, 1), SignedRanks.Of([0, 0, 0]));
        Assert.Equal(1, SignedRanks.Of([1, -1]).PValue);
        Assert.Equal(1000, SignedRanks.Of(Enumerable.Range(1, 1000).Select(i => (double)i)).Used);
    }
}
