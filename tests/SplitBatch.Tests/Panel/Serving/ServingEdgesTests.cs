using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using UnitsNet;

namespace SplitBatch.Panel.Serving;

/// <summary>Counts, refusals and words of serving and of ballots, by hand.</summary>
public class ServingEdgesTests
{
    private static ServingBalance Balance(Protocol protocol, params string[] served) =>
        new(SetDesign.For(protocol).Orders, [.. served.Select(text => new ServingOrder(text))]);

    [Fact]
    public void Orders_served_are_counted_by_order_odd_beer_place_and_reference()
    {
        var triangle = Balance(Protocol.Triangle, "AAB", "AAB", "ABA", "BAA", "ABB", "BAB");
        Assert.Equal(new SideCount(2, 4), triangle.OddBeer);
        Assert.Equal([2, 2, 2], triangle.OddAt);
        Assert.Equal([new SideCount(4, 2), new SideCount(4, 2), new SideCount(2, 4)], triangle.AtPosition);
        Assert.Equal((2, 0), (triangle.Uses["AAB"], triangle.Uses["BBA"]));
        Assert.Equal((false, true), (triangle.IsBalanced, triangle.IsLopsided));
        Assert.StartsWith("not balanced: ", triangle.InWords, StringComparison.Ordinal);
        Assert.Contains("AAB 2", triangle.InWords, StringComparison.Ordinal);
        Assert.Equal((2, 2, 0), (triangle.OddBeer.Gap, triangle.AtPosition[1].Gap, new SideCount(3, 3).Gap));

        var duo = Balance(Protocol.DuoTrio, "A:AB", "A:BA", "A:AB", "B:AB");
        Assert.Equal(new SideCount(3, 1), duo.Reference);
        Assert.Equal([new SideCount(3, 1), new SideCount(1, 3)], duo.AtPosition);
        Assert.True(duo.IsLopsided);
    }

    [Theory]
    [InlineData("AB BA", "each of 2 orders once", true, false)]
    [InlineData("AB BA AB BA AB BA", "each of 2 orders 3 times", true, false)]
    [InlineData("AB BA AB", "each of 2 orders 1 or 2 times", true, false)]
    [InlineData("AB", "each of 2 orders at most once", true, false)]
    [InlineData("AB AB", "not balanced: AB 2, BA 0", false, true)]
    [InlineData("AB AB BA BA AB AB", "not balanced: AB 4, BA 2", false, false)]
    [InlineData("AB AB BA BA AB AB AB", "not balanced: AB 5, BA 2", false, true)]
    public void Balance_is_told_and_lopsided_means_more_than_twice_as_often(string served, string words, bool balanced, bool lopsided)
    {
        var balance = Balance(Protocol.PairedDirectional, served.Split(' '));
        Assert.Equal((words, balanced, lopsided), (balance.InWords, balance.IsBalanced, balance.IsLopsided));
    }

    [Fact]
    public void A_departure_is_graver_where_orders_are_lopsided()
    {
        var plan = new PanelPlan(Protocol.PairedDirectional, 6) { Declared = new(2026, 3, 14) };
        Departure Of(params string[] served) =>
            Assert.Single(
                plan.Departures(new PanelPractice(Protocol.PairedDirectional, 6, 6)
                {
                    Orders = Balance(Protocol.PairedDirectional, served),
                }));
        Assert.Equal(Severity.Warning, Of("AB", "AB", "BA", "BA", "AB", "AB").Severity);
        Assert.Contains("weighs a little", Of("AB", "AB", "BA", "BA", "AB", "AB").Meaning, StringComparison.Ordinal);
        Assert.Equal(Severity.Error, Of("AB", "AB", "AB", "AB", "AB", "BA").Severity);
        Assert.Contains("can pass for a difference", Of("AB", "AB", "AB", "AB", "AB", "BA").Meaning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("ABC")]
    [InlineData("A:")]
    [InlineData("AB:A")]
    [InlineData(":AB")]
    [InlineData("C:AB")]
    [InlineData("A:AC")]
    public void What_is_no_order_is_refused(string text) => Assert.ThrowsAny<ArgumentException>(() => new ServingOrder(text));

    [Fact]
    public void An_order_knows_its_odd_beer_and_place()
    {
        (Side?, int?) Of(string text) => (new ServingOrder(text).OddBeer, new ServingOrder(text).OddPosition);
        Assert.Equal((Side.B, 3), Of("AAB"));
        Assert.Equal((Side.A, 1), Of("ABB"));
        Assert.Equal((null, null), Of("AB"));
        Assert.Equal((null, null), Of("ABAB"));
        Assert.Equal((Side.A, null), Of("AABBB"));
        Assert.True(new ServingOrder("AB").IsMixed);
        Assert.False(new ServingOrder("BB").IsMixed);
        Assert.Equal(Side.A, new ServingOrder("A:BA").Reference);
    }

    [Theory]
    [InlineData(9, "T1", "T9")]
    [InlineData(10, "T01", "T10")]
    [InlineData(99, "T01", "T99")]
    [InlineData(100, "T001", "T100")]
    public void Codes_of_tasters_are_of_one_length(int tasters, string first, string last)
    {
        var names = ServingPlan.Balanced(Protocol.PairedDirectional, tasters, seed: 1).Tasters;
        Assert.Equal((first, last), (names[0], names[^1]));
    }

    [Fact]
    public void Seatings_that_cannot_be_are_refused_and_those_at_the_edge_are_made()
    {
        void Refused(ServingOptions options, string words) =>
            Assert.Contains(words,
                Assert.ThrowsAny<ArgumentException>(() => ServingPlan.Balanced(Protocol.Triangle, 6, 1, options)).Message,
                StringComparison.Ordinal);
        Refused(new() { EveryoneEachSession = true, Sessions = 3, Replicates = 2 },
            "With everyone in each of 3 sessions, each taster needs at least 3 sets; replicates is 2.");
        Refused(new() { Sessions = 7 }, "7 sessions for 6 tasters leave a session empty.");
        Refused(new() { Sessions = 3, Servers = 3 }, "3 servers are more than the tasters of a session.");
        Refused(new() { Tasters = ["a", "b"] }, "2 names were given for 6.");
        Refused(new() { Tasters = ["a", "b", "c", "d", "e", " "] }, "A name is blank.");
        Refused(new() { Tasters = ["a", "b", "c", "d", "e", "A"] }, "The name a stands twice.");
        Assert.Equal(2,
            ServingPlan.Balanced(Protocol.Triangle, 6, 1,
                new() { EveryoneEachSession = true, Sessions = 2, Replicates = 2, Servers = 6 }).Sessions.Count);
        Assert.Equal(["a", "b", "c", "d", "e", "f"],
            ServingPlan.Balanced(Protocol.Triangle, 6, 1, new() { Tasters = ["a", "b", "c", "d", "e", "f"] }).Tasters);
        Assert.Equal(6, ServingPlan.Balanced(Protocol.Triangle, 6, 1, new() { Sessions = 6 }).Sessions.Count);
        Assert.Equal([2, 2, 2], ServingPlan.Balanced(Protocol.Triangle, 6, 1, new() { Sessions = 3, Servers = 2 }).Sets
            .GroupBy(set => set.Session).Select(group => group.Count()));
        Assert.All(ServingPlan.Balanced(Protocol.Triangle, 6, 1, new() { Sessions = 3, Servers = 2 }).Sets.GroupBy(set => set.Session),
            group => Assert.Equal(2, group.Select(set => set.Server).Distinct().Count()));
    }

    [Fact]
    public void A_cup_is_found_by_taster_code_and_set()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 4, seed: 2,
            new ServingOptions { Tasters = ["Fern", "Moss", "Reed", "Sedge"], Replicates = 2 });
        var set = plan.Sets.Last(set => set.Taster == "Moss");
        var cup = set.CodedCups.Last();
        Assert.Equal((set, cup), CupFinder.Find(plan, " mo ss ", $" {cup.Code} ", null, out var problem));
        Assert.Equal("", problem);
        Assert.Equal((set, cup), CupFinder.Find(plan, "MOSS", cup.Code, set.Number, out _));
        Assert.Null(CupFinder.Find(plan, "Moss", cup.Code, plan.Sets.First(set => set.Taster == "Moss").Number, out problem));
        Assert.StartsWith($"The code {cup.Code} is not on a cup of Moss, who had ", problem, StringComparison.Ordinal);
        Assert.Null(CupFinder.Find(plan, "Alder", cup.Code, null, out problem));
        Assert.Equal("The key has no taster \"Alder\".", problem);
    }

    [Fact]
    public void Ballots_and_their_standing_are_told()
    {
        Assert.Equal(["T1: 482", "T1, set 3: no answer", "T1: no answer"],
            new[] { new Ballot("T1", "482"), new Ballot("T1", " ") { Set = 3 }, new Ballot("T1", "") }
                .Select(ballot => ballot.ToString()));
        Assert.Equal(["T1: 2 of 3", "T1: 2 of 3 (4 served)"],
            new[] { new TasterResult("T1", 3, 3, 2), new TasterResult("T1", 4, 3, 2) }.Select(result => result.ToString()));
        ScoredBallot late = new(new Ballot("T1", "482"), null, null, Standing.Excluded, [new(BallotIssue.Late, "handed in late")]);
        Assert.Equal("T1: 482: not counted (handed in late)", late.ToString());
        Assert.Equal("T1: 482: counted", (late with { Standing = Standing.Counted, Notes = [] }).ToString());
        Assert.Equal("T1: 482: counted as wrong (handed in late)", (late with { Standing = Standing.CountedAsWrong }).ToString());

        var plan = ServingPlan.Balanced(Protocol.PairedTwoSided, 4, seed: 2);
        var scored = plan.Score([new Ballot("T1", plan.Sets[0].CodedCups.First().Code), new Ballot("T9", "111") { Row = 3 }]);
        Assert.Matches(@"^paired two-sided: [01] of 1 for B; 4 served, 2 returned, 1 not counted, 3 missing$", scored.ToString());
        Assert.Empty(scored.Answers);
        var faults = scored.Faults("ballots.csv");
        Assert.All(faults, fault => Assert.Equal(Severity.Warning, fault.Severity));
        Assert.Equal(3, faults[0].Row);
        Assert.EndsWith("(not counted).", faults[0].Problem, StringComparison.Ordinal);
        Assert.Equal(3, faults.Count(fault => fault.Problem.EndsWith(": no ballot came back.", StringComparison.Ordinal)));
        Assert.Matches("^triangle: 0 of 0 correct; ", ServingPlan.Balanced(Protocol.Triangle, 4, seed: 2).Score([]).ToString());
    }

    [Fact]
    public void The_pour_refuses_what_cannot_be_and_finds_the_one_who_gets_most()
    {
        var plan = ServingPlan.Balanced(Protocol.PairedDirectional, 5, seed: 1, new ServingOptions { Replicates = 3 });
        PourPlan Of(PourOptions? options = null, double a = 5, double b = 5) => PourPlan.For(plan, a, b, options);
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(new() { Serving = Temperature.FromDegreesCelsius(-3) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(new() { Serving = Temperature.FromDegreesCelsius(41) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(new() { Container = Volume.Zero }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(a: 0.05));
        Assert.Equal(0, Of(a: 0, b: 0).Most.Alcohol.Milliliters);
        Assert.Equal(0.2, PourPlan.For(plan, 0.2, 0.2).Most.Alcohol.Milliliters / 3, 1e-9);
        Assert.Equal(-2, Of(new() { Serving = Temperature.FromDegreesCelsius(-2) }).Options.Serving.DegreesCelsius, 1e-9);
        Assert.Equal(6, Of().Most.Cups);
        Assert.Equal(15, Of().Beers[0].Cups);
        Assert.Equal(30, Of().Beers.Sum(beer => beer.Cups));
        Assert.EndsWith("(1 container)", Of(new() { Container = Volume.FromLiters(1) }).Beers[0].ToString(), StringComparison.Ordinal);

        // The stronger beer: who gets most of it gets most alcohol.
        var uneven = PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1), 0, 6);
        Assert.Equal(uneven.Tasters.Max(taster => taster.Alcohol.Milliliters), uneven.Most.Alcohol.Milliliters);
        Assert.Equal(6.0, uneven.Most.Alcohol.Milliliters, 1e-9);
    }

    [Fact]
    public void Cautions_stand_at_their_edges()
    {
        string Of(int replicates, double gap, params string[] allergens) =>
            string.Join(" ",
                PourPlan.For(ServingPlan.Balanced(Protocol.PairedDirectional, 6, seed: 1, new ServingOptions { Replicates = replicates }),
                    5, 5 + gap, new() { Allergens = allergens.Length == 0 ? null : Allergens.Of(allergens) }).Cautions);
        Assert.DoesNotContain("tire the palate", Of(4, 0, "barley"), StringComparison.Ordinal);
        Assert.Contains("5 sets in one sitting tire the palate", Of(5, 0, "barley"), StringComparison.Ordinal);
        Assert.DoesNotContain("differ by", Of(1, 0.49, "barley"), StringComparison.Ordinal);
        Assert.Contains("differ by 0.5 % in alcohol", Of(1, 0.5, "barley"), StringComparison.Ordinal);
        Assert.Contains("before the first cup: barley (gluten), lactose (milk sugar).", Of(1, 0, "barley", "lactose"),
            StringComparison.Ordinal);
        Assert.Contains("Nobody has said yet which allergens are in the beers.", Of(1, 0), StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_asks_for_what_its_answer_names()
    {
        Assert.Equal([2, 1, 0, 0], new[] { Protocol.Tetrad, Protocol.Triangle, Protocol.ANotA, Protocol.SameDifferent }
            .Select(protocol => SetDesign.For(protocol).CodesInAnswer));
        Assert.Throws<ArgumentException>(() => SetDesign.For(Protocol.PairedDirectional, attribute: " "));
        Assert.All(SetDesign.For(Protocol.ThreeAfc, Side.A).Orders, order => Assert.Equal(Side.A, order.OddBeer));
        Assert.All(SetDesign.For(Protocol.ThreeAfc).Orders, order => Assert.Equal(Side.B, order.OddBeer));
    }

    [Fact]
    public void Sittings_are_a_part_of_the_plan()
    {
        var plan = new PanelPlan(Protocol.Triangle, 24) { Sessions = 2 };
        Assert.Equal([1, 2], ServingPlan.Balanced(plan).Sessions);
        var done = new PanelPractice(Protocol.Triangle, 24, 24);
        Assert.DoesNotContain(plan.Departures(done with { Sessions = 2 }), point => point.Kind == DepartureKind.Sessions);
        var open = plan with { Sessions = null };
        Assert.DoesNotContain(open.Departures(done with { Sessions = 3 }), point => point.Kind == DepartureKind.Sessions);
        var departure = Assert.Single(plan.Departures(done with { Sessions = 3 }), point => point.Kind == DepartureKind.Sessions);
        Assert.Equal(("2", "3"), (departure.Planned, departure.Done));
    }
}
