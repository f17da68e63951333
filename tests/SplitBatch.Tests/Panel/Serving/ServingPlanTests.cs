using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

public class ServingPlanTests
{
    public static TheoryData<string> Protocols => [.. Protocol.All.Select(protocol => protocol.Name)];

    [Fact]
    public void A_triangle_has_the_six_orders_of_the_standard()
    {
        // ISO 4120 (and J. Soc. Cosmet. Chem. 22, 1971): ABB BAB BBA AAB ABA BAA.
        string[] published = ["ABB", "BAB", "BBA", "AAB", "ABA", "BAA"];
        Assert.Equal(published.Order(), ServingOrders.For(Protocol.Triangle).Select(order => order.Text).Order());
    }

    [Theory]
    [InlineData("duo-trio", 4)]
    [InlineData("duo-trio constant reference", 2)]
    [InlineData("tetrad", 6)]
    [InlineData("paired directional", 2)]
    [InlineData("paired two-sided", 2)]
    [InlineData("3-AFC", 3)]
    [InlineData("two-out-of-five", 20)]
    [InlineData("A-not-A", 2)]
    [InlineData("same-different", 4)]
    public void Every_protocol_has_all_its_orders_once_and_pours_what_it_says(string name, int count)
    {
        var protocol = Protocol.Parse(name);
        var design = SetDesign.For(protocol);
        Assert.Equal(count, design.Orders.Distinct().Count());
        Assert.Equal(count, design.Orders.Count);
        Assert.Equal(protocol.Pours, design.Cups);
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Orders_beers_and_positions_are_balanced_for_every_panel_of_1_to_24(string name) => AssertBalanced(name, 1, 24);

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Orders_beers_and_positions_are_balanced_for_every_panel_of_25_to_200(string name) => AssertBalanced(name, 25, 200);

    private static void AssertBalanced(string name, int from, int to)
    {
        var protocol = Protocol.Parse(name);
        for (int n = from; n <= to; n++)
        {
            var plan = ServingPlan.Balanced(protocol, n, seed: n);
            var balance = plan.Balance;
            Assert.Equal(n, balance.Uses.Values.Sum());
            Assert.True(balance.IsBalanced, $"{n}: {balance}");
            Assert.True(balance.Reference.Gap <= (name == "duo-trio constant reference" ? n : 1), $"{n}: reference {balance.Reference}");
            if (protocol != Protocol.ThreeAfc) Assert.True(balance.OddBeer.Gap <= 1, $"{n}: odd beer {balance.OddBeer}");
            if (plan.Design.Orders[0].OddPosition is not null)
                Assert.True(balance.OddAt.Max() - balance.OddAt.Min() <= 1, $"{n}: odd at {string.Join(' ', balance.OddAt)}");
            // Three triangles with the odd cup at each position once and two of them odd by one beer must leave a position with that
            // beer's rival alone.
            int most = protocol == Protocol.TwoOutOfFive || protocol == Protocol.Triangle ? 3 : protocol == Protocol.ThreeAfc ? n : 2;
            if (n % plan.Design.Orders.Count == 0 && protocol != Protocol.ThreeAfc) most = 0;
            Assert.True(balance.AtPosition.Max(count => count.Gap) <= most, $"{n}: {string.Join(' ', balance.AtPosition)}");
        }
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Codes_are_unique_in_a_sitting_and_do_not_hint(string name)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(name), 60, seed: 5, sessions: 4, servers: 2, replicates: 3);
        foreach (var sitting in plan.Sets.GroupBy(set => (set.Session, set.Taster)))
        {
            string[] codes = [.. sitting.SelectMany(set => set.CodedCups).Select(cup => cup.Code)];
            Assert.Equal(codes.Length, codes.Distinct().Count());
            Assert.All(codes, code => Assert.Null(CodePool.Objection(code)));
        }
        foreach (var set in plan.Sets)
        {
            Assert.Equal(set.CodedCups.Count(), set.CodedCups.Select(cup => cup.Code[0]).Distinct().Count());
            Assert.Equal(set.CodedCups.Count(), set.CodedCups.Select(cup => cup.Code[2]).Distinct().Count());
        }
    }

    [Fact]
    public void A_session_uses_no_code_twice_while_fresh_ones_remain()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 60, seed: 5);
        string[] codes = [.. plan.Sets.SelectMany(set => set.Cups).Select(cup => cup.Code)];
        Assert.Equal(180, codes.Distinct().Count());
    }

    [Fact]
    public void First_digits_say_nothing_about_the_beer()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 48, seed: 11);
        var cups = plan.Sets.SelectMany(set => set.Cups).ToLookup(cup => cup.Beer);
        for (char digit = '1'; digit <= '9'; digit++)
        {
            foreach (var side in Enum.GetValues<Side>())
            {
                int count = cups[side].Count(cup => cup.Code[0] == digit);
                Assert.InRange(count, 7, 9);
            }
        }
    }

    [Theory]
    [InlineData("111")]
    [InlineData("123")]
    [InlineData("321")]
    [InlineData("100")]
    [InlineData("200")]
    [InlineData("122")]
    [InlineData("151")]
    [InlineData("246")]
    [InlineData("911")]
    [InlineData("666")]
    [InlineData("420")]
    [InlineData("007")]
    [InlineData("069")]
    [InlineData("613")]
    [InlineData("689")]
    [InlineData("42")]
    [InlineData("A12")]
    public void A_code_that_is_remembered_or_hints_is_refused(string code) => Assert.NotNull(CodePool.Objection(code));

    [Fact]
    public void The_pool_is_large_enough_for_a_hundred_triangles() => Assert.True(CodePool.All.Count >= 300, $"{CodePool.All.Count}");

    [Fact]
    public void The_same_seed_gives_the_same_plan_and_another_seed_another()
    {
        var one = ServingPlan.Balanced(Protocol.Triangle, 24, seed: 2026);
        Assert.Equal(one.Key, ServingPlan.Balanced(Protocol.Triangle, 24, seed: 2026).Key);
        Assert.NotEqual(one.Key, ServingPlan.Balanced(Protocol.Triangle, 24, seed: 2027).Key);
        Assert.Equal("24 tasters, triangle: 24 sets of 3 cups in 1 session, each of 6 orders 4 times (seed 2026)", one.ToString());
    }

    [Fact]
    public void Sessions_servers_and_rounds_are_balanced_as_nearly_as_they_can_be()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            var plan = ServingPlan.Balanced(Protocol.Triangle, 23, seed, sessions: 3, servers: 2, replicates: 2);
            Assert.Equal([1, 2, 3], plan.Sessions);
            Assert.Equal(46, plan.Sets.Count);
            foreach (var session in plan.Sets.GroupBy(set => set.Session))
            {
                Assert.InRange(session.Select(set => set.Taster).Distinct().Count(), 7, 8);
                Assert.Equal(2, session.Select(set => set.Server).Distinct().Count());
                AssertBalanced(session, 2, 2);
            }
            foreach (var round in plan.Sets.GroupBy(set => set.Replicate)) AssertBalanced(round, 3, 3);
            foreach (var taster in plan.Sets.GroupBy(set => set.Taster))
            {
                Assert.Equal(2, taster.Count());
                Assert.Equal(2, taster.Select(set => set.Order).Distinct().Count());
            }
        }

        static void AssertBalanced(IEnumerable<ServedSet> sets, int orders, int beers)
        {
            var balance = new ServingBalance(ServingOrders.For(Protocol.Triangle), [.. sets.Select(set => set.Order)]);
            Assert.True(balance.Uses.Values.Max() - balance.Uses.Values.Min() <= orders, balance.ToString());
            Assert.True(balance.OddBeer.Gap <= beers, balance.OddBeer.ToString());
        }
    }

    [Fact]
    public void A_taster_with_two_single_cups_gets_one_of_each_beer()
    {
        var plan = ServingPlan.Balanced(Protocol.ANotA, 7, seed: 3, replicates: 2);
        Assert.All(plan.Sets.GroupBy(set => set.Taster),
            taster => Assert.Equal(2, taster.Select(set => set.Order.Text).Distinct().Count()));
        Assert.InRange(plan.Sets.Count(set => set.Replicate == 1 && set.Order.Text == "A"), 3, 4);
    }

    [Fact]
    public void Everyone_in_each_session_shares_the_replicates_out()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1,
            new ServingOptions { Sessions = 2, Replicates = 4, EveryoneEachSession = true });
        Assert.All(plan.Sets.GroupBy(set => (set.Session, set.Taster)), sitting => Assert.Equal(2, sitting.Count()));
        Assert.Equal(24, plan.Sets.Count);
    }

    [Fact]
    public void Every_taster_is_seated_once_for_any_sharing_out()
    {
        for (int tasters = 1; tasters <= 40; tasters++)
        {
            for (int sessions = 1; sessions <= Math.Min(tasters, 7); sessions++)
            {
                var plan = ServingPlan.Balanced(Protocol.PairedTwoSided, tasters, 1, sessions, servers: Math.Min(3, tasters / sessions));
                int[] sizes = [.. plan.Sets.GroupBy(set => set.Session).Select(group => group.Count())];
                Assert.Equal(sessions, sizes.Length);
                Assert.True(sizes.Max() - sizes.Min() <= 1);
                Assert.Equal(tasters, plan.Tasters.Count);
            }
        }
    }

    [Fact]
    public void An_order_or_a_beer_does_not_stick_to_a_seat()
    {
        // Over many seeds each seat gets each order about as often: 600 plans, 100 expected, 6 standard deviations are 55.
        var counts = new Dictionary<(int Seat, string Order), int>();
        for (int seed = 0; seed < 600; seed++)
        {
            foreach (var set in ServingPlan.Balanced(Protocol.Triangle, 8, seed).Sets)
                counts[(set.Number, set.Order.Text)] = counts.GetValueOrDefault((set.Number, set.Order.Text)) + 1;
        }
        Assert.Equal(48, counts.Count);
        Assert.All(counts.Values, count => Assert.InRange(count, 45, 155));
    }

    [Fact]
    public void Bad_counts_are_refused_with_what_is_accepted()
    {
        Assert.Contains("between 1 and 1000",
            Assert.Throws<ArgumentOutOfRangeException>(() => ServingPlan.Balanced(Protocol.Triangle, 0, 1)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => ServingPlan.Balanced(Protocol.Triangle, 5, 1, replicates: 0));
        Assert.Contains("leave a session empty",
            Assert.Throws<ArgumentException>(() => ServingPlan.Balanced(Protocol.Triangle, 2, 1, sessions: 3)).Message);
        Assert.Contains("servers are more",
            Assert.Throws<ArgumentException>(() => ServingPlan.Balanced(Protocol.Triangle, 6, 1, sessions: 3, servers: 3)).Message);
        Assert.Contains("stands twice", Assert.Throws<ArgumentException>(() =>
            ServingPlan.Balanced(Protocol.Triangle, 2, 1, new ServingOptions { Tasters = ["Fern", "fern"] })).Message);
    }
}
