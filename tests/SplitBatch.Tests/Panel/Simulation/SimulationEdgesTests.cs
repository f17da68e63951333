using SplitBatch.Numbers;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Simulation;

/// <summary>Simulated people and panels, by hand: means of spreads, exact shares, refusals and words.</summary>
public class SimulationEdgesTests
{
    private const double D = 1.3;

    private static SimulatedTasters Same(double dPrime) => new(DPrimeSpread.Same(dPrime));

    [Fact]
    public void The_mean_over_a_spread_is_its_integral()
    {
        Assert.Equal((0.3 * D * D) + (0.7 * 4), DPrimeSpread.Discriminators(0.3, D).Mean(d => d == 0 ? 4 : d * d), 1e-12);
        // Far from nought the bell is not cut: E d = m, E d² = m² + s².
        Assert.Equal(5, DPrimeSpread.Normal(5, 0.5).Mean(d => d), 1e-9);
        Assert.Equal(25.25, DPrimeSpread.Normal(5, 0.5).Mean(d => d * d), 1e-9);
        Assert.Equal(7, DPrimeSpread.Normal(3, 0).Mean(d => d + 4), 1e-12);
        // Cut at nought in the middle: half of the people at nought, the others a half-normal with mean s √(2/π).
        Assert.Equal(2 * Math.Sqrt(2 / Math.PI) / 2, DPrimeSpread.Normal(0, 2).Mean(d => d), 1e-9);
        Assert.Equal(0.5 * 3, DPrimeSpread.Normal(0, 2).Mean(d => d == 0 ? 3 : 0), 1e-9);
        Assert.Equal((0.15865525393145707 * 1) + (0.8413447460685429 * 2), DPrimeSpread.Normal(1, 1).Mean(d => d == 0 ? 1 : 2), 1e-6);
        // Log-normal: mean = median e^(s²/2).
        Assert.Equal(1.5 * Math.Exp(0.18), DPrimeSpread.LogNormal(1.5, 0.6).Mean(d => d), 1e-6);
    }

    [Fact]
    public void People_drawn_from_a_spread_follow_it()
    {
        (double Mean, double Sd) Of(DPrimeSpread spread)
        {
            var random = new SeededRandom(3, 0);
            var drawn = Enumerable.Range(0, 20_000).Select(_ => spread.Draw(ref random)).ToArray();
            return (drawn.Average(), Math.Sqrt(drawn.Average(d => d * d) - (drawn.Average() * drawn.Average())));
        }

        Assert.Equal(5, Of(DPrimeSpread.Normal(5, 0.5)).Mean, 0.02);
        Assert.Equal(0.5, Of(DPrimeSpread.Normal(5, 0.5)).Sd, 0.02);
        Assert.Equal(0.3 * D, Of(DPrimeSpread.Discriminators(0.3, D)).Mean, 0.02);
        Assert.Equal(1.5 * Math.Exp(0.18), Of(DPrimeSpread.LogNormal(1.5, 0.6)).Mean, 0.05);
        Assert.Equal(1.5 * Math.Exp(0.18) * Math.Sqrt(Math.Exp(0.36) - 1), Of(DPrimeSpread.LogNormal(1.5, 0.6)).Sd, 0.06);
    }

    [Fact]
    public void The_share_expected_of_tired_and_guessing_people_is_the_mean_over_their_sets()
    {
        var triangle = Protocol.Triangle;
        double Share(double d) => triangle.CorrectShare(d);
        Assert.Equal((Share(2) + Share(2 * 0.8) + Share(2 * 0.64)) / 3,
            (Same(2) with { Fatigue = 0.2 }).ExpectedCorrect(triangle, 3), 1e-12);
        Assert.Equal((0.25 / 3) + (0.75 * Share(2)), (Same(2) with { Guessing = 0.25 }).ExpectedCorrect(triangle), 1e-12);
        Assert.Equal((0.25 / 3) + (0.75 * (Share(2) + Share(1)) / 2),
            (Same(2) with { Guessing = 0.25, Fatigue = 0.5 }).ExpectedCorrect(triangle, 2), 1e-12);
        Assert.Equal(Share(2), (Same(2) with { FavouredShare = 0.5 }).ExpectedCorrect(triangle), 1e-12);
        Assert.Equal(Share(2), (Same(2) with { Fatigue = 0.2, DropOut = 0.3 }).ExpectedCorrect(triangle), 1e-12);
        Assert.Equal(Share(2), (Same(2) with { DropOut = 0.3 }).ExpectedCorrect(triangle, 3), 1e-12);
        SimulatedTasters[] biased = [Same(2) with { FirstCupLift = 0.5 }, Same(2) with { FavouredShare = 0.5, Guessing = 0.1 },
            Same(2) with { Fatigue = 0.2, DropOut = 0.3 }];
        Assert.All(biased, model => Assert.Throws<InvalidOperationException>(() => model.ExpectedCorrect(triangle, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Same(2).ExpectedCorrect(triangle, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Same(2).ExpectedCorrect(triangle, 21));
    }

    [Fact]
    public void People_say_what_they_are()
    {
        Assert.Equal(
            "nobody can tell; 10 % of the answers are guesses; the first cup seems 0.5 stronger; 40 % of the guesses take the first cup; "
                + "each further set loses 20 % of d-prime; 15 % leave before each further set; 5 % never come",
            (SimulatedTasters.Guessers with
            {
                Guessing = 0.1,
                FirstCupLift = 0.5,
                FavouredShare = 0.4,
                Fatigue = 0.2,
                DropOut = 0.15,
                NoShow = 0.05,
            }).ToString());
        Assert.Equal("everyone has d-prime 1.3; the first cup seems 0.5 weaker", (Same(D) with { FirstCupLift = -0.5 }).ToString());
        Assert.Equal("30 % can tell, the others guess", DPrimeSpread.Discriminators(0.3).ToString());
        Assert.Equal("30 % have d-prime 9.5, the others cannot tell", DPrimeSpread.Discriminators(0.3, 9.5).ToString());
        SimulatedTastings tastings = new(Protocol.Triangle, 1, 400, 160, 7);
        Assert.Equal("triangle at d-prime 1: 40 % of 400 tastings right (seed 7)", tastings.ToString());
        Assert.Equal(Math.Sqrt(0.4 * 0.6 / 400), tastings.StandardError, 1e-12);
    }

    [Fact]
    public void Tired_people_miss_more_and_those_who_leave_answer_less()
    {
        SimulatedPanels Of(SimulatedTasters model, int replicates = 4) =>
            Simulate.Panels(Protocol.PairedDirectional, 10, 4000, seed: 5, model, replicates);
        double Counted(SimulatedPanels panels) =>
            panels.Outcomes.Sum(outcome => (double)outcome.Key.Counted * outcome.Value) / panels.Panels;
        double Right(SimulatedPanels panels) =>
            panels.Outcomes.Sum(outcome => (double)outcome.Key.Correct * outcome.Value) / panels.Panels;
        var tired = Same(2) with { Fatigue = 0.5 };
        Assert.Equal(40 * tired.ExpectedCorrect(Protocol.PairedDirectional, 4), Right(Of(tired)), 0.2);
        var guessing = Same(2) with { Guessing = 0.4 };
        Assert.Equal(40 * guessing.ExpectedCorrect(Protocol.PairedDirectional, 4), Right(Of(guessing)), 0.2);
        // Each stays for the next set with 0.7: 1 + 0.7 + 0.49 + 0.343 sets; one in five never comes.
        Assert.Equal(10 * 2.533, Counted(Of(Same(2) with { DropOut = 0.3 })), 0.2);
        Assert.Equal(40 * 0.8, Counted(Of(Same(2) with { NoShow = 0.2 })), 0.3);
        Assert.Equal(40, Counted(Of(Same(2))));
        Assert.StartsWith("4,000 panels of 10 tasters with 4 sets each (paired directional; everyone has d-prime 2): ",
            Of(Same(2)).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("4,000 panels of 10 tasters (paired directional; everyone has d-prime 2): ", Of(Same(2), 1).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Two_sided_panels_show_a_difference_either_way()
    {
        var panels = Simulate.Panels(Protocol.PairedTwoSided, 20, 20_000, seed: 5, SimulatedTasters.Guessers);
        var critical = Power.CriticalCount(Protocol.PairedTwoSided, 20, 0.05)!.Value;
        Assert.Equal(panels.AtLeast(critical) + (1 - panels.AtLeast(21 - critical)), panels.ShowingADifference(), 1e-12);
        Assert.Equal(2 * ExactBinomial.AtLeast(critical, 20, 0.5), panels.ShowingADifference(), 0.01);
        Assert.Equal(0, panels.AtLeast(21));
        Assert.Equal(1, panels.AtLeast(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => panels.AtLeast(22));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulate.Panels(Protocol.Triangle, 20, 0, 1, SimulatedTasters.Guessers));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulate.Tastings(Protocol.Triangle, 1, 0, 1));
        // Nobody comes to some panels of one: they show nothing.
        Assert.Equal(0, Simulate.Panels(Protocol.Triangle, 1, 2000, 1, Same(9) with { NoShow = 0.5 }).ShowingADifference());
    }

    [Fact]
    public void A_rehearsal_adds_both_ways_of_showing_a_difference()
    {
        var rehearsal = Simulate.Rehearse(new PanelPlan(Protocol.PairedDirectional, 200) { Margin = 0.38 }, Same(0.45),
            panels: 2000, seed: 3);
        Assert.Equal(1, rehearsal.Shares.Values.Sum(), 1e-12);
        Assert.All(new[] { PanelAnswer.DifferenceShown, PanelAnswer.DifferenceWithinMargin },
            answer => Assert.True(rehearsal.Shares[answer] > 0.05));
        Assert.Equal(rehearsal.Simulated.ShowingADifference(), rehearsal.ShowingADifference, 1e-12);
    }

    /// <summary>Guesses that favour the first cup take it so often, words included: "A" or "same" is the first word.</summary>
    [Fact]
    public void Favoured_guesses_take_the_first_cup_or_word()
    {
        var plan = ServingPlan.Balanced(Protocol.ANotA, 400, seed: 1);
        var guessers = SimulatedTasters.Guessers with { Guessing = 1 };
        double First(SimulatedTasters model) => Simulate.Ballots(plan, model, seed: 4).Count(ballot => ballot.Answer == "A") / 400.0;
        Assert.Equal(1, First(guessers with { FavouredShare = 1 }));
        Assert.Equal(0.75, First(guessers with { FavouredShare = 0.5 }), 0.07);
        Assert.Equal(0.5, First(guessers), 0.08);
    }

    [Fact]
    public void Whole_numbers_below_a_limit_are_alike()
    {
        var random = new SeededRandom(1, 0);
        var counts = new int[3];
        for (var i = 0; i < 30_000; i++) counts[random.NextBelow(3)]++;
        Assert.All(counts, count => Assert.InRange(count, 9700, 10_300));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeededRandom(1, 0).NextBelow(0));
    }

    [Fact]
    public void Mean_and_variance_are_those_of_the_counts()
    {
        var panels = Simulate.Panels(Protocol.Triangle, 12, 3000, seed: 5, Same(1));
        var mean = panels.Counts.Select((times, k) => (double)times * k).Sum() / 3000;
        Assert.Equal(mean, panels.Mean, 1e-12);
        Assert.Equal(panels.Counts.Select((times, k) => times * Math.Pow(k - mean, 2)).Sum() / 3000, panels.Variance, 1e-9);
        Assert.Equal(mean / 12, panels.CorrectShare, 1e-12);
    }

    /// <summary>Cup by cup: whoever loses all of d-prime after the first set guesses from the second on.</summary>
    [Fact]
    public void Simulated_ballots_name_set_and_session_and_tire()
    {
        var plan = ServingPlan.Balanced(Protocol.PairedDirectional, 300, seed: 2, sessions: 2, servers: 1, replicates: 2);
        var ballots = plan.Ballots(Same(8) with { Fatigue = 1 }, seed: 6);
        Assert.Equal(plan.Sets.Select(set => ((int?)set.Number, (int?)set.Session)),
            ballots.Select(ballot => (ballot.Set, ballot.Session)));
        var scored = plan.Score(ballots).Ballots.ToLookup(ballot => ballot.Set!.Replicate, ballot => ballot.IsCorrect);
        Assert.DoesNotContain(false, scored[1]);
        Assert.Equal(150, scored[2].Count(right => right), 45.0);
        Assert.Equal(300 + (0.8 * 300), plan.Ballots(Same(2) with { DropOut = 0.2 }, seed: 6).Count, 35.0);
    }
}
