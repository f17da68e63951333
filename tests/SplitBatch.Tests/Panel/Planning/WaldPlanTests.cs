using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

public class WaldPlanTests
{
    // Slope and intercepts, and Wald's approximate panel sizes; p0, p1 as shares right.
    [Theory]
    [InlineData("triangle", 2.0 / 3, .05, .05, .500000, -2.123964, 2.123964)]
    [InlineData("triangle", 0.5, .05, .10, .415037, -3.247928, 4.169925)]
    [InlineData("duo-trio", 0.7, .05, .10, .602888, -2.657025, 3.411282)]
    [InlineData("duo-trio", 0.7, .10, .10, .602888, -2.593214, 2.593214)]
    public void The_lines_equal_the_sheet_of_check_values(
        string name, double correctAtMargin, double alpha, double beta, double slope, double similar, double different)
    {
        var protocol = Protocol.Parse(name);
        var plan = WaldPlan.Of(protocol, protocol.Discriminators(correctAtMargin), alpha, beta);
        Assert.Equal(slope, plan.Slope, 5.1e-7);
        Assert.Equal(similar, plan.SimilarIntercept, 5.1e-7);
        Assert.Equal(different, plan.DifferentIntercept, 5.1e-7);
    }

    /// <summary>
    /// Duo-trio runs of GOST ISO 16820-2015, table A.1 (parameters from memory): the three decisions at the published trials.
    /// </summary>
    [Theory]
    [InlineData("00010101010", SequentialDecision.Similar, 11, 4)]
    [InlineData("111101110111", SequentialDecision.Different, 12, 10)]
    [InlineData("010101011110111100110001011111", SequentialDecision.PourOn, 30, 19)]
    public void The_published_runs_end_as_published(string answers, SequentialDecision decision, int tasters, int correct)
    {
        var plan = WaldPlan.Of(Protocol.DuoTrio, margin: 0.4, alpha: 0.10, beta: 0.10);
        var path = plan.Follow(answers.Select(c => c == '1'));
        Assert.Equal((decision, tasters, correct), (path.Decision, path.Tasters, path.Correct));
        Assert.Equal(0, path.Unused);
        Assert.Equal(tasters, path.Steps.Count);
        var longer = plan.Follow(answers.Concat("11").Select(c => c == '1'));
        if (decision != SequentialDecision.PourOn) Assert.Equal((decision, tasters, 2), (longer.Decision, longer.Tasters, longer.Unused));
    }

    [Fact]
    public void A_last_taster_between_the_lines_leaves_it_undecided_and_not_the_same()
    {
        var plan = WaldPlan.Of(Protocol.DuoTrio, margin: 0.4, alpha: 0.10, beta: 0.10, lastTaster: 30);
        var path = plan.Follow("010101011110111100110001011111".Select(c => c == '1'));
        Assert.Equal(SequentialDecision.Undecided, path.Decision);
        Assert.Contains("That does not mean the same", path.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("triangle", 0.5, .05, .05, 500)]
    [InlineData("triangle", 0.25, .05, .10, 60)]
    [InlineData("duo-trio", 0.4, .10, .10, 40)]
    [InlineData("tetrad", 0.3, .05, .05, 500)]
    public void True_error_rates_and_panel_sizes_agree_with_simulation(string name, double margin, double alpha, double beta, int last)
    {
        var plan = WaldPlan.Of(Protocol.Parse(name), margin, alpha, beta, last);
        const int runs = 20_000;
        var random = new Random(20260105);
        int[] low = [.. Enumerable.Range(0, last + 1).Select(plan.SimilarAt)],
            high = [.. Enumerable.Range(0, last + 1).Select(plan.DifferentAt)];
        foreach (var share in new[] { 0, margin / 2, margin })
        {
            var exact = plan.At(share);
            Assert.Equal(1, exact.Different + exact.Similar + exact.Undecided, 1e-12);
            var p = plan.Protocol.CorrectFromDiscriminators(share);
            int different = 0, similar = 0;
            long tasters = 0;
            for (var run = 0; run < runs; run++)
            {
                int n = 0, x = 0;
                while (n < last)
                {
                    n++;
                    if (random.NextDouble() < p) x++;
                    if (x <= low[n]) { similar++; break; }
                    if (x >= high[n]) { different++; break; }
                }

                tasters += n;
            }

            Near(exact.Different, different);
            Near(exact.Similar, similar);
            // The spread of the panel size is no larger than about its mean.
            Assert.Equal(exact.Tasters, (double)tasters / runs, 5 * exact.Tasters / Math.Sqrt(runs));
        }

        static void Near(double exact, int count) =>
            Assert.Equal(exact, (double)count / runs, (4.5 * Math.Sqrt(exact * (1 - exact) / runs)) + 1e-4);
    }

    /// <summary>
    /// Wald's bounds: the sum of both true rates cannot exceed the sum of the nominal ones, and his sizes come out a little low.
    /// </summary>
    [Fact]
    public void Untruncated_plans_keep_walds_bounds()
    {
        foreach (var margin in new[] { 0.25, 0.4, 0.5 })
        {
            var plan = WaldPlan.Of(Protocol.Triangle, margin, 0.05, 0.05, lastTaster: 2000);
            WaldCharacteristic none = plan.At(0), there = plan.At(margin);
            Assert.True(none.Undecided < 1e-9 && there.Undecided < 1e-9);
            Assert.True(none.Different + there.Similar <= 0.10);
            Assert.True(none.Different <= 0.05 / 0.95 && there.Similar <= 0.05 / 0.95);
        }

        var even = WaldPlan.Of(Protocol.Triangle, 0.5, 0.05, 0.05, 2000).At(0).Tasters;
        Assert.InRange(even, 11.469, 1.35 * 11.469);
    }

    [Fact]
    public void A_plan_and_its_curve_read_plainly()
    {
        var plan = WaldPlan.Of(Protocol.Triangle, 0.5);
        Assert.StartsWith("triangle, sequential to at most 500: a false difference ", plan.ToString(), StringComparison.Ordinal);
        var curve = plan.Curve(11);
        Assert.Equal(11, curve.Count);
        Assert.True(curve.Zip(curve.Skip(1)).All(pair => pair.Second.Different > pair.First.Different));
    }

    [Fact]
    public void A_two_sided_protocol_or_an_impossible_margin_is_refused()
    {
        Assert.Throws<ArgumentException>(() => WaldPlan.Of(Protocol.PairedTwoSided, 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaldPlan.Of(Protocol.Triangle, 30));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaldPlan.Of(Protocol.Triangle, 0.3, alpha: 0.6));
    }

    /// <summary>
    /// One look keeps the size of the test; more looks can only add to it. The value for 10, 15, 20 is checked by simulation.
    /// </summary>
    [Fact]
    public void Looking_early_has_a_price()
    {
        var once = EarlyLooks.At(Protocol.Triangle, 0.05, 20);
        Assert.Equal(Power.Of(Protocol.Triangle, 20, 0.05, 0), once.TrueAlpha, 1e-14);
        var thrice = EarlyLooks.At(Protocol.Triangle, 0.05, 10, 15, 20);
        Assert.True(thrice.TrueAlpha > once.TrueAlpha);
        var everyTaster = EarlyLooks.At(Protocol.Triangle, 0.05, [.. Enumerable.Range(1, 60)]);
        Assert.True(everyTaster.TrueAlpha > 0.10);
        var random = new Random(7);
        const int runs = 40_000;
        var caught = 0;
        for (var run = 0; run < runs; run++)
        {
            var x = 0;
            for (var n = 1; n <= 20; n++)
            {
                if (random.NextDouble() < 1.0 / 3) x++;
                if (n is 10 or 15 or 20 && x >= Power.CriticalCount(Protocol.Triangle, n)) { caught++; break; }
            }
        }

        Assert.Equal(thrice.TrueAlpha, (double)caught / runs, 4.5 * Math.Sqrt(0.06 / runs));
        Assert.Throws<ArgumentException>(() => EarlyLooks.At(Protocol.Triangle, 0.05, 20, 10));
        Assert.Throws<ArgumentException>(() => EarlyLooks.At(Protocol.Triangle, 0.05));
        Assert.StartsWith("Looking after 10, 15 and 20 tasters", thrice.ToString(), StringComparison.Ordinal);
    }
}
