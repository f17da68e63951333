using SplitBatch.Panel;
using System.Numerics;

namespace SplitBatch.Numbers;

public class ExactBinomialTests
{
    [Fact]
    public void Tails_agree_with_R_to_1e_12_relative_also_where_they_are_tiny()
    {
        var smallest = 1.0;
        foreach (var row in Reference.Read("tails.csv"))
        {
            int n = row.Whole("n"), k = row.Whole("k");
            var p = row.Number("p");
            Check(row, "exactly", ExactBinomial.Exactly(k, n, p));
            Check(row, "at_least", ExactBinomial.AtLeast(k, n, p));
            Check(row, "at_most", ExactBinomial.AtMost(k, n, p));
            var tail = row.Number("at_least");
            if (tail > 0) smallest = Math.Min(smallest, tail);
        }

        Assert.InRange(smallest, 0, 1e-200);

        static void Check(Reference.Row row, string column, double actual)
        {
            // Below 1e-290 a double itself has not the digits; the logarithms are checked there.
            if (row.Number(column) is 0 or > 1e-290)
            {
                Assert.True(Reference.RelativeError(row.Number(column), actual) < 1e-12,
                    $"{string.Join(' ', row.Cells)}: {column} {actual:r}");
            }
        }
    }

    [Fact]
    public void Logarithms_of_tails_agree_with_R_where_the_tail_is_below_the_smallest_double()
    {
        var deepest = 0.0;
        foreach (var row in Reference.Read("tails.csv"))
        {
            int n = row.Whole("n"), k = row.Whole("k");
            var p = row.Number("p");
            Check(row, "log_at_least", ExactBinomial.LogAtLeast(k, n, p));
            Check(row, "log_at_most", ExactBinomial.LogAtMost(k, n, p));
            deepest = Math.Min(deepest, row.Number("log_at_least"));
        }

        Assert.InRange(deepest, double.NegativeInfinity, -1000);

        static void Check(Reference.Row row, string column, double actual) => Assert.True(
            row.Number(column).Equals(actual) || Math.Abs(row.Number(column) - actual) < 1e-12 * Math.Max(1, Math.Abs(actual)),
            $"{string.Join(' ', row.Cells)}: {column} {actual:r}");
    }

    /// <summary>The slow, obvious way: every term as a fraction of whole numbers, with the very double given as the chance.</summary>
    [Theory]
    [InlineData(20, 1.0 / 3)]
    [InlineData(36, 0.5)]
    [InlineData(60, 0.1)]
    [InlineData(97, 8.0 / 15)]
    [InlineData(160, 1.0 / 3)]
    public void Tails_agree_with_whole_number_arithmetic_to_1e_12(int n, double p)
    {
        var scale = BigInteger.One << 60;
        var yes = new BigInteger(p * Math.Pow(2, 60));
        Assert.Equal(p, (double)yes / (double)scale);
        var terms = new BigInteger[n + 1];
        BigInteger choose = 1;
        for (var k = 0; k <= n; k++)
        {
            terms[k] = choose * BigInteger.Pow(yes, k) * BigInteger.Pow(scale - yes, n - k);
            choose = choose * (n - k) / (k + 1);
        }

        var whole = BigInteger.Pow(scale, n);
        for (var k = 0; k <= n; k++)
        {
            var tail = terms.Skip(k).Aggregate(BigInteger.Zero, (a, b) => a + b);
            var actual = ExactBinomial.LogAtLeast(k, n, p);
            var log = BigInteger.Log(tail) - BigInteger.Log(whole);
            Assert.Equal(log, actual, 1e-9 * Math.Max(1, Math.Abs(log)));
            // The ratio to 16 digits by an integer division.
            var digits = (int)Math.Max(0, Math.Floor(-log / Math.Log(10)));
            var scaled = (double)(tail * BigInteger.Pow(10, digits + 18) / whole) / 1e18;
            if (digits < 290)
            {
                var scaledActual = ExactBinomial.AtLeast(k, n, p) * Math.Pow(10, digits);
                Assert.True(Reference.RelativeError(scaled, scaledActual) < 1e-12, $"{k} of {n}: {scaledActual:r} against {scaled:r}");
            }
        }
    }

    // Tails printed with ten digits, computed with SciPy 1.10 and equal to the published tables' decisions.
    [Theory]
    [InlineData(11, 20, 1.0 / 3, .0376365711)]
    [InlineData(10, 20, 1.0 / 3, .0918957745)]
    [InlineData(15, 30, 1.0 / 3, .0434822757)]
    [InlineData(14, 30, 1.0 / 3, .0897709154)]
    [InlineData(21, 36, 1.0 / 3, .0018005461)]
    [InlineData(20, 30, 0.5, .0493685734)]
    [InlineData(26, 40, 0.5, .0403452339)]
    public void Tails_equal_the_sheet_of_check_values(int k, int n, double p, double expected) =>
        Assert.Equal(expected, ExactBinomial.AtLeast(k, n, p), 5e-11);

    [Fact]
    public void A_tie_with_alpha_counts_as_reached()
    {
        Assert.Equal(5, ExactBinomial.CriticalCount(5, 0.5, 1.0 / 32));
        Assert.Equal(6, ExactBinomial.CriticalCount(5, 0.5, 0.031));
    }

    [Fact]
    public void Counts_outside_the_trials_have_chance_nought_or_one()
    {
        Assert.Equal(0, ExactBinomial.AtLeast(21, 20, 0.3));
        Assert.Equal(1, ExactBinomial.AtLeast(-1, 20, 0.3));
        Assert.Equal(1, ExactBinomial.AtMost(25, 20, 0.3));
        Assert.Equal(0, ExactBinomial.AtMost(-1, 20, 0.3));
        Assert.Equal(0, ExactBinomial.Exactly(21, 20, 0.3));
        Assert.Equal(1, ExactBinomial.AtLeast(3, 3, 1));
        Assert.Equal(0, ExactBinomial.AtLeast(1, 3, 0));
    }

    [Theory]
    [InlineData(1.2)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void A_chance_that_is_no_share_is_refused(double share)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => ExactBinomial.AtLeast(3, 10, share));
        Assert.Contains("a share between 0 and 1", error.Message, StringComparison.Ordinal);
    }
}
