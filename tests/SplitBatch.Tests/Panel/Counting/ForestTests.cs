using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class ForestTests
{
    private static readonly PanelCount[] Three =
    [
        new("home", Protocol.Triangle, 24, 13),
        new("club", Protocol.Tetrad, 30, 15),
        new("friends", Protocol.DuoTrio, 20, 11),
    ];

    [Fact]
    public void Panels_stand_side_by_side_each_with_its_own_guessing_chance()
    {
        var forest = Forest.Of(Three);
        Assert.Equal(["home", "club", "friends"], forest.Rows.Select(r => r.Panel.Name));
        Assert.Equal(1.022126, forest.Rows[1].DPrime.Value, 5.1e-7);
        Assert.StartsWith("home: 13 right of 24 (triangle), d-prime ", forest.Rows[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_panel_combined_is_that_panel()
    {
        var one = Forest.Of([Three[0]]).Combine();
        var test = DifferenceTest.Of(Protocol.Triangle, 24, 13);
        Assert.Equal(test.PValue, one.PValue, 1e-13);
        Assert.Equal(test.DPrime.Value, one.DPrime, 1e-6);
        Assert.Equal(test.DPrime.Interval.Low, one.Interval.Low, 1e-6);
        Assert.Equal(test.DPrime.Interval.High, one.Interval.High, 1e-6);
        Assert.Equal(0, one.Heterogeneity, 1e-9);
        Assert.Equal(1, one.HeterogeneityPValue);
    }

    [Fact]
    public void Panels_of_one_protocol_combine_to_the_panel_of_their_sum()
    {
        var two = Forest.Of([new("a", Protocol.Triangle, 24, 13), new("b", Protocol.Triangle, 12, 5)]).Combine();
        var sum = DifferenceTest.Of(Protocol.Triangle, 36, 18);
        Assert.Equal(sum.PValue, two.PValue, 1e-13);
        Assert.Equal(sum.DPrime.Value, two.DPrime, 1e-6);
        // Twice the gain of two shares over one: the G statistic of the 2 x 2 table.
        var g = 2 * ((13 * Math.Log(13.0 / 24 / .5)) + (11 * Math.Log(11.0 / 24 / .5)) + (5 * Math.Log(5.0 / 12 / .5))
            + (7 * Math.Log(7.0 / 12 / .5)));
        Assert.Equal(g, two.Heterogeneity, 1e-8);
        Assert.Equal(1 - ChiSquared.CDF(1, g), two.HeterogeneityPValue, 1e-9);
    }

    [Fact]
    public void The_exact_p_value_of_different_protocols_equals_enumeration()
    {
        var combined = Forest.Of(Three).Combine();
        double p = 0;
        for (var x = 0; x <= 24; x++)
        for (var y = 0; y <= 30; y++)
        for (var z = 0; z <= 20; z++)
        {
            if (x + y + z >= 39)
                p += ExactBinomial.Exactly(x, 24, 1.0 / 3) * ExactBinomial.Exactly(y, 30, 1.0 / 3) * ExactBinomial.Exactly(z, 20, 0.5);
        }

        Assert.Equal(p, combined.PValue, 1e-12);
        Assert.True(combined.Interval.Contains(combined.DPrime));
        Assert.Contains("Method: stratified by panel", combined.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Panels_that_disagree_are_said_to_disagree()
    {
        var combined = Forest.Of([new("a", Protocol.Triangle, 30, 28), new("b", Protocol.Triangle, 30, 10)]).Combine();
        Assert.True(combined.HeterogeneityPValue < 0.001);
        Assert.Contains("the panels disagree", combined.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_sided_panels_and_no_panels_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Forest.Of([]));
        var error = Assert.Throws<ArgumentException>(() => Forest.Of([new("liking", Protocol.PairedTwoSided, 20, 12)]).Combine());
        Assert.Contains("\"liking\" is two-sided", error.Message, StringComparison.Ordinal);
    }
}
