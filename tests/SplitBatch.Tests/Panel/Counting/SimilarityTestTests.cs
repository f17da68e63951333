using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class SimilarityTestTests
{
    [Fact]
    public void Largest_counts_agree_with_R()
    {
        foreach (var row in Reference.Read("similarity-counts.csv"))
        {
            var protocol = Reference.ProtocolWith(row.Number("chance"), sides: 1);
            Assert.Equal(row.Whole("largest"), Power.SimilarityCount(protocol, row.Whole("n"), row.Number("pd"), row.Number("beta")));
        }
    }

    // Triangle, margins 20, 30, 40 %: beta .05 then .10; exact binomial by SciPy 1.10.
    [Theory]
    [InlineData(18, 4, 5, 6, 5, 6, 7)]
    [InlineData(24, 6, 8, 9, 7, 9, 10)]
    [InlineData(30, 9, 11, 13, 10, 11, 14)]
    [InlineData(36, 11, 13, 16, 12, 14, 17)]
    [InlineData(60, 21, 25, 29, 22, 26, 30)]
    [InlineData(84, 31, 36, 42, 32, 38, 44)]
    [InlineData(108, 41, 48, 55, 43, 50, 57)]
    public void Largest_counts_equal_the_sheet_of_check_values(int n, int a, int b, int c, int d, int e, int f) => Assert.Equal(
        [a, b, c, d, e, f],
        new[] { 0.05, 0.10 }
            .SelectMany(beta => new[] { 0.2, 0.3, 0.4 }.Select(pd => Power.SimilarityCount(Protocol.Triangle, n, pd, beta))));

    /// <summary>Paired similarity, n = 132, GOST R 53161-2008 (ISO 5495): the rows of the printed table that are exact.</summary>
    [Fact]
    public void The_printed_row_of_the_paired_standard_is_reproduced()
    {
        var margins = new[] { 0.2, 0.3, 0.4, 0.5 };
        Assert.Equal([65, 72, 79, 86], margins.Select(m => Power.SimilarityCount(Protocol.PairedDirectional, 132, m, 0.01)));
        Assert.Equal([69, 76, 83, 90], margins.Select(m => Power.SimilarityCount(Protocol.PairedDirectional, 132, m, 0.05)));
        Assert.Equal([71, 78, 85, 92], margins.Select(m => Power.SimilarityCount(Protocol.PairedDirectional, 132, m, 0.10)));
    }

    /// <summary>
    /// Cells of the same printed table that differ from exact computation by one; 74 and 81 are what the standard's normal approximation
    /// gives. Checked against MathNet.Numerics' own binomial.
    /// </summary>
    [Theory]
    [InlineData(0.001, 0.3, 67, 68)]
    [InlineData(0.001, 0.4, 74, 75)]
    [InlineData(0.001, 0.5, 81, 82)]
    [InlineData(0.20, 0.4, 88, 87)]
    public void Where_the_printed_row_differs_the_exact_count_keeps_its_error(double beta, double margin, int printed, int exact)
    {
        Assert.Equal(exact, Power.SimilarityCount(Protocol.PairedDirectional, 132, margin, beta));
        double share = 0.5 + (margin / 2);
        Assert.True(MathNet.Numerics.Distributions.Binomial.CDF(share, 132, exact) <= beta
            && MathNet.Numerics.Distributions.Binomial.CDF(share, 132, exact + 1) > beta);
        Assert.Equal(1, Math.Abs(printed - exact));
    }

    // One-sided exact 95 % upper limits, SciPy 1.10; at or above what guessing gives.
    [Theory]
    [InlineData(22, 60, .22098976)]
    [InlineData(18, 60, .16969847)] // Below: the limit of 20 right.
    public void The_share_still_allowed_equals_the_sheet_of_check_values(int correct, int tasters, double allowed) =>
        Assert.Equal(allowed, SimilarityTest.Of(Protocol.Triangle, tasters, correct, margin: 0.3).StillAllowed, 5.1e-9);

    [Fact]
    public void The_normal_approximation_is_one_count_more_generous_and_decides_nothing()
    {
        var test = SimilarityTest.Of(Protocol.Triangle, 36, 14, margin: 0.3);
        Assert.Equal(13, test.LargestCount);
        Assert.False(test.MarginRuledOut);
        Assert.True(test.StillAllowedByNormalApproximation < 0.3);
        Assert.True(test.StillAllowed > 0.3);
    }

    [Fact]
    public void The_margin_is_ruled_out_exactly_when_the_limit_lies_below_it()
    {
        foreach (var protocol in Protocol.All.Where(p => p.HasKnownChance))
        {
            for (var n = 1; n <= 80; n += 7)
            {
                for (var x = 0; x <= n; x++)
                {
                    var test = SimilarityTest.Of(protocol, n, x, margin: 0.35, beta: 0.1);
                    Assert.Equal(test.StillAllowed <= 0.35, test.Count <= test.LargestCount && test.LargestCount >= n * protocol.Chance);
                    Assert.Equal(test.PValue <= 0.1, test.Count <= test.LargestCount);
                }
            }
        }
    }

    /// <summary>ISO 4120, 8.2: no statement where the largest count would lie below what guessing gives.</summary>
    [Fact]
    public void A_panel_too_small_rules_nothing_out_however_few_are_right()
    {
        var test = SimilarityTest.Of(Protocol.Triangle, tasters: 18, correct: 2, margin: 0.2);
        Assert.Equal(4, test.LargestCount);
        Assert.False(test.LargeEnough);
        Assert.False(test.MarginRuledOut);
        Assert.Contains("so small a panel cannot rule out 20 % discriminators", test.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_four_answers_are_told_apart()
    {
        Assert.Equal(PanelAnswer.DifferenceShown, PanelReading.Of(Protocol.Triangle, 60, 35, margin: 0.3).Answer);
        Assert.Equal(PanelAnswer.DifferenceWithinMargin, PanelReading.Of(Protocol.Triangle, 300, 120, margin: 0.3).Answer);
        Assert.Equal(PanelAnswer.MarginRuledOut, PanelReading.Of(Protocol.Triangle, 60, 20, margin: 0.3).Answer);
        Assert.Equal(PanelAnswer.Inconclusive, PanelReading.Of(Protocol.Triangle, 18, 8, margin: 0.3).Answer);
    }

    [Fact]
    public void Eight_of_eighteen_names_what_is_still_allowed_and_what_would_settle_it()
    {
        var reading = PanelReading.Of(Protocol.Triangle, tasters: 18, correct: 8, margin: 0.30);
        Assert.Equal(
            "8 right of 18 settles nothing: no difference is shown (p = 0.223), yet up to 49 % discriminators are still allowed. "
            + "That does not mean the same. 73 tasters would settle it, whatever they answered.",
            reading.ToString());
    }

    [Fact]
    public void The_size_that_settles_leaves_no_count_without_an_answer()
    {
        foreach (var margin in new[] { 0.3, 0.5 })
        {
            var size = Power.TastersThatSettle(Protocol.Triangle, 0.05, margin, beta: 0.05);
            Assert.True(Answered(size.First, margin));
            Assert.False(Answered(size.First - 1, margin));
            Assert.False(Answered(size.Always - 1, margin) && size.Always > size.First);
            for (var n = size.Always; n < size.Always + 25; n++) Assert.True(Answered(n, margin));
        }

        static bool Answered(int n, double margin) => Enumerable.Range(0, n + 1)
            .All(x => DifferenceTest.Of(Protocol.Triangle, n, x).DifferenceShown
                || SimilarityTest.Of(Protocol.Triangle, n, x, margin).MarginRuledOut);
    }
}
