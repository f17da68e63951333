using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;
using UnitsNet;

namespace SplitBatch.Panel.Planning;

public class PowerToolsTests
{
    [Fact]
    public void The_table_found_in_one_walk_equals_each_cell_found_alone_and_R()
    {
        double[] alphas = [.1, .05, .01, .001], powers = [.8, .9, .95, .99], shares = [.1, .2, .3, .4, .5];
        foreach (var protocol in new[] { Protocol.Triangle, Protocol.DuoTrio, Protocol.TwoOutOfFive })
        {
            var table = TastersTable.Of(protocol, alphas, powers, shares, largest: 4000);
            Assert.Equal(80, table.Cells.Count);
            foreach (var row in Reference.Read("tasters-needed.csv"))
            {
                if (!ReferenceEquals(Reference.ProtocolWith(row.Number("chance"), row.Whole("sides")), protocol)) continue;
                var cell = table[row.Number("alpha"), row.Number("power"), row.Number("pd")];
                Assert.Equal((row.Whole("first"), row.Whole("always")), (cell.First, cell.Always));
            }
        }
    }

    [Fact]
    public void The_table_of_a_hundred_cells_equals_vectorised_SciPy()
    {
        var table = TastersTable.Of(Protocol.Triangle, [.2, .1, .05, .01, .001], [.8, .9, .95, .99], [.1, .2, .3, .4, .5], largest: 2000);
        var rows = Reference.Read("tasters-table.csv");
        Assert.Equal(100, rows.Count);
        foreach (var row in rows)
        {
            var cell = table[row.Number("alpha"), row.Number("power"), row.Number("pd")];
            Assert.Equal((row.Whole("first"), row.Whole("always")), (cell.First ?? -1, cell.Always ?? 2001));
        }
    }

    [Fact]
    public void Sizes_beyond_the_table_are_left_open()
    {
        var cell = TastersTable.Of(Protocol.Triangle, [.05], [.8], [.1], largest: 340).Cells.Single();
        Assert.Equal((325, null), (cell.First, cell.Always));
        Assert.Null(TastersTable.Of(Protocol.Triangle, [.05], [.8], [.1], largest: 300).Cells.Single().First);
        Assert.Throws<ArgumentException>(() => TastersTable.Of(Protocol.PairedTwoSided, [.05], [.8], [.1]));
    }

    [Fact]
    public void A_power_curve_over_sizes_saws_and_over_shares_rises()
    {
        var saw = PowerCurve.OverTasters(Protocol.Triangle, 0.05, 0.3, 12, 60);
        Assert.Equal(49, saw.Count);
        Assert.Contains(saw.Zip(saw.Skip(1)), pair => pair.Second.Power < pair.First.Power);
        Assert.All(saw, point => Assert.True(point.TrueAlpha <= 0.05));
        var rise = PowerCurve.OverDiscriminators(Protocol.Triangle, 24, 0.05);
        Assert.All(rise.Zip(rise.Skip(1)), pair => Assert.True(pair.Second.Power > pair.First.Power));
        Assert.Equal(rise[0].TrueAlpha, rise[0].Power);
    }

    [Fact]
    public void The_reach_of_a_panel_is_where_its_power_says()
    {
        foreach (var protocol in Protocol.All.Where(p => p.HasKnownChance))
        {
            var reach = PanelReach.Of(protocol, 24);
            Assert.NotNull(reach.Detects);
            Assert.Equal(0.80, Power.Of(protocol, 24, 0.05, reach.Detects.Value), 1e-9);
            // Just above the margin it is ruled out often enough; just below it is not.
            Assert.True(Power.OfSimilarity(protocol, 24, 0.05, reach.RulesOut + 1e-6) >= 0.80);
            Assert.True(Power.OfSimilarity(protocol, 24, 0.05, reach.RulesOut - 1e-6) < 0.80);
        }

        Assert.Equal(
            "20 tasters (triangle): a difference shows in 80 % of panels or more if 42 % or more discriminate; if nobody does, 80 % of "
                + "panels or more can rule out 41 % discriminators and no smaller share.",
            PanelReach.Of(Protocol.Triangle, 20).ToString());
        Assert.Null(PanelReach.Of(Protocol.DuoTrio, 4).Detects);
    }

    [Fact]
    public void Protocols_are_set_against_one_another_for_the_same_difference()
    {
        var rows = ProtocolComparison.At(dPrime: 1, pour: Volume.FromMilliliters(50));
        Assert.Equal(Protocol.All, rows.Select(r => r.Protocol));
        var by = rows.ToDictionary(r => r.Protocol);
        Assert.True(by[Protocol.PairedDirectional].Always < by[Protocol.Tetrad].Always);
        Assert.True(by[Protocol.Tetrad].Always < by[Protocol.Triangle].Always / 2);
        Assert.True(by[Protocol.Triangle].Always < by[Protocol.DuoTrio].Always);
        Assert.Equal(3 * by[Protocol.Triangle].Always, by[Protocol.Triangle].Cups);
        Assert.Equal(0.05 * by[Protocol.Triangle].Cups, by[Protocol.Triangle].Beer.Liters, 1e-9);
        Assert.Equal(.41804667, by[Protocol.Triangle].CorrectShare, 5.1e-9);
        Assert.Null(by[Protocol.ANotA].Discriminators);
        Assert.True(by[Protocol.SameDifferent].First > by[Protocol.ANotA].First);
        Assert.All(rows, row => Assert.Contains(row.Protocol.Question, row.ToString(), StringComparison.Ordinal));
    }

    /// <summary>The exact sum over every table, the slow way, and the first size confirmed by its neighbour.</summary>
    [Fact]
    public void Power_of_a_yes_no_panel_equals_the_sum_over_all_tables()
    {
        const int n = 17;
        double hits = 0.75, alarms = 0.35, sum = 0;
        for (var h = 0; h <= n; h++)
        for (var f = 0; f <= n; f++)
        {
            if (YesNoTest.Of(Protocol.ANotA, h, n, f, n).DifferenceShown)
                sum += ExactBinomial.Exactly(h, n, hits) * ExactBinomial.Exactly(f, n, alarms);
        }

        Assert.Equal(sum, YesNoPower.Of(n, 0.05, hits, alarms), 1e-12);
        var sets = YesNoPower.SetsNeeded(Protocol.ANotA, 0.05, 0.8, 1);
        var rate = Protocol.ANotA.CorrectShare(1);
        Assert.True(YesNoPower.Of(sets / 2, 0.05, rate, 1 - rate) >= 0.8);
        for (var smaller = 2; smaller < sets / 2; smaller++) Assert.True(YesNoPower.Of(smaller, 0.05, rate, 1 - rate) < 0.8);
        Assert.Throws<ArgumentException>(() => YesNoPower.SetsNeeded(Protocol.Triangle, 0.05, 0.8, 1));
    }
}
