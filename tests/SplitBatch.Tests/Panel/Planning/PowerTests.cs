using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

public class PowerTests
{
    [Fact]
    public void Tasters_needed_agree_with_R_first_and_always()
    {
        var compared = 0;
        foreach (var row in Reference.Read("tasters-needed.csv"))
        {
            var protocol = Reference.ProtocolWith(row.Number("chance"), row.Whole("sides"));
            var needed = Power.TastersNeeded(protocol, row.Number("alpha"), row.Number("power"), row.Number("pd"));
            Assert.Equal((row.Whole("first"), row.Whole("always")), (needed.First, needed.Always));
            compared++;
        }

        Assert.Equal(320, compared);
    }

    [Fact]
    public void Tasters_needed_for_similarity_agree_with_R_first_and_always()
    {
        foreach (var row in Reference.Read("tasters-needed-similarity.csv"))
        {
            var protocol = Reference.ProtocolWith(row.Number("chance"), row.Whole("sides"));
            var needed = Power.TastersNeededForSimilarity(protocol, row.Number("beta"), row.Number("power"), row.Number("pd"));
            Assert.Equal((row.Whole("first"), row.Whole("always")), (needed.First, needed.Always));
        }
    }

    /// <summary>
    /// A size that rules a margin out with a power above one half never falls under the rule that the largest count must not lie below
    /// guessing (ISO 4120, 8.2), so power and decision agree.
    /// </summary>
    [Fact]
    public void A_panel_sized_for_similarity_is_large_enough_to_state_it()
    {
        foreach (var protocol in Protocol.All.Where(p => p.HasKnownChance))
        foreach (var margin in new[] { 0.2, 0.3, 0.5 })
        {
            var needed = Power.TastersNeededForSimilarity(protocol, beta: 0.05, power: 0.80, margin);
            for (var n = needed.Always; n < needed.Always + 20; n++)
            {
                var atLimit = SimilarityTest.Of(protocol, n, Power.SimilarityCount(protocol, n, margin), margin);
                Assert.True(atLimit.LargeEnough && atLimit.MarginRuledOut);
                Assert.True(Power.OfSimilarity(protocol, n, 0.05, margin) >= 0.80);
            }

            if (needed.First > 1) Assert.True(Power.OfSimilarity(protocol, needed.First - 1, 0.05, margin) < 0.80);
        }
    }

    /// <summary>
    /// ISO 4120 table A.3 and the handbook of Meilgaard, Civille and Carr: the first size in each cell recalled, 30 %, alpha 5 %.
    /// </summary>
    [Theory]
    [InlineData(.20, 40, 42)]
    [InlineData(.10, 53, 57)]
    [InlineData(.05, 66, 73)]
    [InlineData(.01, 98, 102)]
    public void The_published_sizes_of_the_triangle_are_the_first_ones(double beta, int first, int always)
    {
        var needed = Power.TastersNeeded(Protocol.Triangle, alpha: 0.05, power: 1 - beta, discriminators: 0.30);
        Assert.Equal((first, always), (needed.First, needed.Always));
    }

    [Fact]
    public void Every_size_of_the_sheet_of_check_values_is_reproduced()
    {
        var rows = Reference.Read("tasters-needed-published.csv");
        Assert.Equal(76, rows.Count);
        foreach (var row in rows)
        {
            var needed = Power.TastersNeeded(Protocol.Parse(row.Text("protocol")), row.Number("alpha"), 1 - row.Number("beta"),
                row.Number("pd"));
            Assert.Equal((row.Whole("first"), row.Whole("always")), (needed.First, needed.Always));
        }
    }

    [Fact]
    public void Power_saws_where_the_sheet_of_check_values_says_so()
    {
        // 10 %, alpha .05, beta .001: reached at 1178, missed at 1179 and 1180, reached at 1181.
        Assert.Equal(
            [true, false, false, true],
            Enumerable.Range(1178, 4).Select(n => Power.Of(Protocol.Triangle, n, 0.05, 0.1) >= 0.999));
        Assert.Equal(1178, Power.TastersNeeded(Protocol.Triangle, 0.05, 0.999, 0.1).First);
    }

    // Exact power at alpha .05 for 20, 30, 40, 50 % discriminators, SciPy 1.10.
    [Theory]
    [InlineData(12, .018758, .135885, .264597, .438178, .631521)]
    [InlineData(20, .037637, .299824, .531655, .755337, .908104)]
    [InlineData(24, .028441, .296734, .550475, .786978, .932341)]
    [InlineData(30, .043482, .426044, .709083, .902943, .981205)]
    [InlineData(36, .028349, .406377, .715508, .917356, .987501)]
    [InlineData(60, .039692, .649964, .922533, .993363, .999827)]
    public void Exact_power_equals_the_sheet_of_check_values(int n, double size, double p20, double p30, double p40, double p50)
    {
        double[] expected = [size, p20, p30, p40, p50];
        double[] shares = [0, 0.2, 0.3, 0.4, 0.5];
        foreach (var (share, power) in shares.Zip(expected)) Assert.Equal(power, Power.Of(Protocol.Triangle, n, 0.05, share), 5.1e-7);
    }

    [Fact]
    public void The_sentence_tells_both_sizes()
    {
        Assert.Equal(
            "triangle: 40 tasters to show a difference when 30 % are discriminators (error 5 %, power 80 %); power rises in a saw-tooth, "
                + "and from 42 on it is always reached.",
            Power.TastersNeeded(Protocol.Triangle, 0.05, 0.80, 0.30).ToString());
    }

    [Theory]
    [InlineData(1.2, 0.8, 0.3)]
    [InlineData(0.05, 1.0, 0.3)]
    [InlineData(0.05, 0.8, 0)]
    [InlineData(0.05, 0.8, 30)]
    public void Numbers_that_are_no_shares_are_refused(double alpha, double power, double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Power.TastersNeeded(Protocol.Triangle, alpha, power, share));

    /// <summary>Three tasters who all discriminate: (1/3)^3 is below 5 %, (1/3)^2 is not.</summary>
    [Fact]
    public void When_everyone_discriminates_the_smallest_panel_that_can_show_it_is_enough()
    {
        var needed = Power.TastersNeeded(Protocol.Triangle, 0.05, 0.8, discriminators: 1);
        Assert.Equal((3, 3), (needed.First, needed.Always));
        var paired = Power.TastersNeeded(Protocol.PairedTwoSided, 0.05, 0.8, discriminators: 1);
        Assert.Equal((6, 6), (paired.First, paired.Always));
    }

    [Fact]
    public void A_difference_too_small_for_any_panel_is_refused_with_advice()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Power.TastersNeeded(Protocol.Triangle, 0.05, 0.8, 1e-6));
        Assert.Contains("ask for a larger share of discriminators", error.Message, StringComparison.Ordinal);
    }
}
