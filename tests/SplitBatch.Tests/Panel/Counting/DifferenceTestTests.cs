using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class DifferenceTestTests
{
    /// <summary>The common-practice check: 20 tasters, triangle, 5 %: 11 (also J. Soc. Cosmet. Chem. 22, 1971, p. 214).</summary>
    [Fact]
    public void Twenty_tasters_of_a_triangle_need_eleven_right_at_5_percent()
    {
        Assert.Equal(11, Power.CriticalCount(Protocol.Triangle, 20, 0.05));
        var test = DifferenceTest.Of(Protocol.Triangle, tasters: 20, correct: 11);
        Assert.True(test.DifferenceShown);
        Assert.Equal(.0376365711, test.PValue, 5e-11);
        Assert.False(DifferenceTest.Of(Protocol.Triangle, 20, 10).DifferenceShown);
    }

    [Fact]
    public void Critical_counts_agree_with_R_for_up_to_500_tasters()
    {
        foreach (var row in Reference.Read("critical-counts.csv"))
        {
            var protocol = Reference.ProtocolWith(row.Number("chance"), row.Whole("sides"));
            var n = row.Whole("n");
            var expected = row.Whole("critical");
            Assert.Equal(expected > n ? null : expected, Power.CriticalCount(protocol, n, row.Number("alpha")));
        }
    }

    /// <summary>
    /// The rows name the printed tables they were compared with: ISO 4120 (FAO V7180E) for the triangle, ISO 10399 for the duo-trio.
    /// </summary>
    [Fact]
    public void Critical_counts_equal_the_published_tables()
    {
        foreach (var row in Reference.Read("critical-counts-published.csv"))
        {
            int? expected = row.Text("critical") == "-" ? null : row.Whole("critical");
            Assert.Equal(expected, Power.CriticalCount(Protocol.Parse(row.Text("protocol")), row.Whole("n"), row.Number("alpha")));
        }
    }

    // Intervals at 95 %, computed with SciPy 1.10.
    [Theory]
    [InlineData(0, 10, 0, .30849711, 0, .27753280, .00004789, .21719627)]
    [InlineData(11, 20, .31527813, .76942210, .34208534, .74180214, .33766496, .74897656)]
    [InlineData(14, 30, .28341808, .65674476, .30232389, .63857700, .29810226, .64132771)]
    [InlineData(18, 30, .40603493, .77344235, .42320360, .75409372, .42220027, .75951408)]
    [InlineData(20, 20, .83156653, 1, .83887484, 1, .88336102, .99997575)]
    [InlineData(40, 100, .30329477, .50279085, .30940129, .49799741, .30795230, .49774326)]
    public void Intervals_equal_the_sheet_of_check_values(
        int k, int n, double cpLow, double cpHigh, double wilsonLow, double wilsonHigh, double jeffreysLow, double jeffreysHigh)
    {
        var test = DifferenceTest.Of(Protocol.Triangle, n, k);
        Near(test.ClopperPearson, cpLow, cpHigh);
        Near(test.Wilson, wilsonLow, wilsonHigh);
        Near(test.Jeffreys, jeffreysLow, jeffreysHigh);

        static void Near(Interval interval, double low, double high)
        {
            Assert.Equal(low, interval.Low, 5.1e-9);
            Assert.Equal(high, interval.High, 5.1e-9);
        }
    }

    [Fact]
    public void Intervals_agree_with_R_to_ten_digits()
    {
        foreach (var row in Reference.Read("intervals.csv"))
        {
            int n = row.Whole("n"), k = row.Whole("k");
            var level = row.Number("level");
            Near(row, "cp", ShareIntervals.ClopperPearson(k, n, level));
            Near(row, "wilson", ShareIntervals.Wilson(k, n, level));
            Near(row, "jeffreys", ShareIntervals.Jeffreys(k, n, level));
        }

        static void Near(Reference.Row row, string name, Interval interval)
        {
            Assert.Equal(row.Number(name + "_low"), interval.Low, 1e-10);
            Assert.Equal(row.Number(name + "_high"), interval.High, 1e-10);
        }
    }

    // d-prime and its standard error, quadrature with SciPy 1.10; the triangle at 18/30 and the duo-trio at 21/30 also with a solver in R.
    [Theory]
    [InlineData("triangle", 12, 20, 1.975585, .555848)]
    [InlineData("triangle", 11, 20, 1.722927, .562967)]
    [InlineData("triangle", 18, 30, 1.975585, .453848)]
    [InlineData("triangle", 30, 60, 1.466263, .338558)]
    [InlineData("duo-trio", 21, 30, 1.715302, .496401)]
    [InlineData("duo-trio", 40, 60, 1.518853, .357932)]
    [InlineData("2-AFC", 21, 30, .741614, .340305)]
    [InlineData("3-AFC", 18, 30, .885175, .300797)]
    [InlineData("tetrad", 18, 30, 1.362597, .298803)]
    [InlineData("tetrad", 15, 30, 1.022126, .324694)]
    public void D_prime_and_its_standard_error_equal_the_sheet_of_check_values(string name, int correct, int tasters, double d,
        double error)
    {
        var estimate = DifferenceTest.Of(Protocol.Parse(name), tasters, correct).DPrime;
        Assert.Equal(d, estimate.Value, 5.1e-7);
        Assert.NotNull(estimate.StandardError);
        Assert.Equal(error, estimate.StandardError.Value, 5.1e-7);
        Assert.True(estimate.Interval.Contains(d));
    }

    [Fact]
    public void At_chance_d_prime_is_nought_without_a_standard_error_and_with_all_right_it_has_no_upper_limit()
    {
        var guess = DifferenceTest.Of(Protocol.Triangle, 30, 10).DPrime;
        Assert.Equal(0, guess.Value);
        Assert.Null(guess.StandardError);
        Assert.Equal(0, guess.Interval.Low);
        Assert.InRange(guess.Interval.High, 0.5, 2);
        var sure = DifferenceTest.Of(Protocol.Triangle, 30, 30).DPrime;
        Assert.Equal(double.PositiveInfinity, sure.Value);
        Assert.Equal(double.PositiveInfinity, sure.Interval.High);
        Assert.InRange(sure.Interval.Low, 3, 10);
        Assert.Contains("no upper limit", sure.ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Published worked cases: Byer and Abrams (1953), quinine triangle, 25 of 50; handbook cases of 12 and 30 assessors (from memory).
    /// </summary>
    [Theory]
    [InlineData(50, 25, .01082668)]
    [InlineData(12, 8, .01875843)]
    [InlineData(30, 17, .00722284)]
    public void Published_worked_cases_have_their_p_values(int tasters, int correct, double p) =>
        Assert.Equal(p, DifferenceTest.Of(Protocol.Triangle, tasters, correct).PValue, 5.1e-9);

    /// <summary>Workshop table, Gilbert (2011): n = 12..24 at 5 %.</summary>
    [Fact]
    public void The_workshop_table_is_reproduced() => Assert.Equal(
        [8, 8, 9, 9, 9, 10, 10, 11, 11, 12, 12, 12, 13],
        Enumerable.Range(12, 13).Select(n => Power.CriticalCount(Protocol.Triangle, n)!.Value));

    [Fact]
    public void A_two_sided_test_judges_the_more_frequent_answer()
    {
        var one = DifferenceTest.Of(Protocol.PairedTwoSided, 30, 9);
        var other = DifferenceTest.Of(Protocol.PairedTwoSided, 30, 21);
        Assert.Equal(one.PValue, other.PValue);
        Assert.Equal(2 * ExactBinomial.AtLeast(21, 30, 0.5), one.PValue, 1e-15);
        Assert.Equal(21, one.Count);
        Assert.True(one.DifferenceShown);
        Assert.Equal(1, DifferenceTest.Of(Protocol.PairedTwoSided, 30, 15).PValue);
    }

    [Fact]
    public void A_panel_too_small_to_show_anything_says_so()
    {
        var test = DifferenceTest.Of(Protocol.DuoTrio, 4, 4);
        Assert.Null(test.CriticalCount);
        Assert.False(test.DifferenceShown);
        Assert.Contains("no count of so few could show one", test.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, 21, "21 right of 20 cannot be")]
    [InlineData(20, -1, "-1 right of 20 cannot be")]
    [InlineData(0, 0, "The number of sets tasted is 0; it must be 1 or more.")]
    public void Impossible_counts_are_refused(int tasters, int correct, string message)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => DifferenceTest.Of(Protocol.Triangle, tasters, correct));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Eight_right_of_eighteen_is_never_called_the_same()
    {
        var sentence = DifferenceTest.Of(Protocol.Triangle, tasters: 18, correct: 8).ToString();
        Assert.Equal(
            "8 right of 18 (triangle): no difference shown at 5 % (p = 0.223; 10 needed). That does not mean the same: it still allows up "
                + "to 49 % discriminators (95 % confidence).",
            sentence);
    }
}
