using SplitBatch.Numbers;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Simulation;

public class SimulationTests
{
    private const double Sigmas = 5;

    public static TheoryData<string, double> ProtocolsAndDistances
    {
        get
        {
            TheoryData<string, double> rows = [];
            foreach (var protocol in Protocol.All)
            {
                foreach (double d in new[] { 0, 0.5, 1, 1.5, 2, 3 }) rows.Add(protocol.Name, d);
            }
            return rows;
        }
    }

    public static TheoryData<string> Protocols => [.. Protocol.All.Select(protocol => protocol.Name)];

    [Theory]
    [MemberData(nameof(ProtocolsAndDistances))]
    public void The_share_of_right_answers_is_that_of_the_psychometric_function(string name, double d)
    {
        var protocol = Protocol.Parse(name);
        var run = Simulate.Tastings(protocol, d, 200_000, seed: 7);
        double exact = protocol.CorrectShare(d);
        double error = Math.Sqrt(exact * (1 - exact) / run.Tastings);
        Assert.True(Math.Abs(run.CorrectShare - exact) < Sigmas * error,
            $"{run.CorrectShare:0.00000} against {exact:0.00000} (standard error {error:0.00000})");
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Whole_panels_with_orders_codes_and_ballots_give_the_same_share(string name)
    {
        var protocol = Protocol.Parse(name);
        ServingPlan[] plans = [.. Enum.GetValues<Side>().Select(side =>
            ServingPlan.Balanced(protocol, 120, seed: 1, new ServingOptions { Replicates = 4, Sessions = 4, Expected = side }))];
        foreach (double d in new[] { 0, 1, 2.5 })
        {
            var panels =
                plans.SelectMany(plan => Enumerable.Range(0, 3)
                    .Select(seed => plan.Score(plan.Ballots(new SimulatedTasters(DPrimeSpread.Same(d)), seed)))).ToArray();
            Assert.All(panels, panel => Assert.Empty(panel.Remarkable));
            int counted = panels.Sum(panel => panel.Counted), correct = panels.Sum(panel => panel.Correct);
            Assert.Equal(6 * 480, counted);
            double exact = protocol.CorrectShare(d), error = Math.Sqrt(exact * (1 - exact) / counted);
            Assert.True(Math.Abs(((double)correct / counted) - exact) < Sigmas * error,
                $"d-prime {d}: {(double)correct / counted:0.0000} against {exact:0.0000} (standard error {error:0.0000})");
        }
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void A_choice_is_judged_as_the_ballot_that_it_writes(string name)
    {
        var model = new SimulatedTasters(DPrimeSpread.Same(1)) { Guessing = 0.3, FavouredShare = 0.5, FirstCupLift = 0.5 };
        var plan = ServingPlan.Balanced(Protocol.Parse(name), 40, seed: 1);
        var random = new SeededRandom(4);
        foreach (var set in plan.Sets)
        {
            var choice = Perception.Decide(ref random, set.Order, plan.Design, plan.Expected, 1, model);
            var scored = plan.Score([new Ballot(set.Taster, choice.Write([.. set.CodedCups.Select(cup => cup.Code)], plan.Design))]);
            Assert.Equal(choice.IsRight(set.Order, plan.Design, plan.Expected), scored.Correct == 1);
        }
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void The_cup_by_cup_path_and_the_quick_one_agree(string name)
    {
        var protocol = Protocol.Parse(name);
        // A lift too small to matter sends the panels through the cup-by-cup path.
        var model = new SimulatedTasters(DPrimeSpread.Same(1)) { FirstCupLift = 1e-12 };
        var run = Simulate.Panels(protocol, 100, 2000, seed: 6, model);
        double exact = protocol.CorrectShare(1), error = Math.Sqrt(exact * (1 - exact) / run.Tastings);
        Assert.True(Math.Abs(run.CorrectShare - exact) < Sigmas * error,
            $"{run.CorrectShare:0.0000} against {exact:0.0000} ({error:0.0000})");
    }

    [Fact]
    public void Panels_of_guessers_come_out_as_the_binomial_distribution_says()
    {
        // Check values, 4.2: triangle, P(X >= 11 | 20) = .0376365711, P(X >= 10 | 20) = .0918957745.
        const int panels = 200_000;
        var run = Simulate.Panels(Protocol.Triangle, tasters: 20, panels, seed: 3);
        foreach (var (k, exact) in new[] { (11, 0.0376365711), (10, 0.0918957745) })
            Assert.InRange(run.AtLeast(k), exact - (Sigmas * Math.Sqrt(exact * (1 - exact) / panels)),
                exact + (Sigmas * Math.Sqrt(exact * (1 - exact) / panels)));
        Assert.Equal(run.AtLeast(11), run.ShowingADifference(0.05));
        Assert.Equal(panels, run.Counts.Sum());
        Assert.Equal(20L * panels, run.Tastings);
        Assert.Equal(1, run.AtLeast(0));
        Assert.Equal(0, run.AtLeast(21));
    }

    [Fact]
    public void Simulated_power_is_the_exact_power()
    {
        // Check values, 4.4: n = 30, share of discriminators 30 %, alpha .05: power .709083.
        const int panels = 100_000;
        var run = Simulate.Panels(Protocol.Triangle, 30, panels, seed: 5,
            new SimulatedTasters(DPrimeSpread.Discriminators(0.30, dPrime: 60)));
        Assert.InRange(run.ShowingADifference(0.05), 0.709083 - (Sigmas * 0.001437), 0.709083 + (Sigmas * 0.001437));
    }

    [Fact]
    public void The_result_does_not_depend_on_the_cores()
    {
        Assert.Equal(Simulate.Tastings(Protocol.Tetrad, 1, 1_000_000, seed: 9, threads: 1),
            Simulate.Tastings(Protocol.Tetrad, 1, 1_000_000, seed: 9));
        var model = new SimulatedTasters(DPrimeSpread.Normal(1, 0.5)) { DropOut = 0.1, Guessing = 0.1, Fatigue = 0.1 };
        Assert.Equal(
            Simulate.Panels(Protocol.Triangle, 12, 5000, seed: 9, model, replicates: 3, threads: 1).Counts,
            Simulate.Panels(Protocol.Triangle, 12, 5000, seed: 9, model, replicates: 3).Counts);
        Assert.NotEqual(
            Simulate.Panels(Protocol.Triangle, 12, 5000, seed: 9).Counts, Simulate.Panels(Protocol.Triangle, 12, 5000, seed: 10).Counts);
    }

    [Fact]
    public void A_class_sees_a_distribution_grow_because_the_first_panels_stay()
    {
        var few = Simulate.Panels(Protocol.Triangle, 20, 300, seed: 4);
        var many = Simulate.Panels(Protocol.Triangle, 20, 3000, seed: 4);
        Assert.All(Enumerable.Range(0, 21), k => Assert.True(few.Counts[k] <= many.Counts[k]));
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Spread_guessing_and_fatigue_give_the_share_that_quadrature_gives(string name)
    {
        var protocol = Protocol.Parse(name);
        // The quadrature of a quadrature is slow for two-out-of-five, so that gets the simplest spread only.
        DPrimeSpread[] spreads = protocol == Protocol.TwoOutOfFive
            ? [DPrimeSpread.Discriminators(0.4, 3)]
            : [DPrimeSpread.Normal(0.8, 0.9), DPrimeSpread.LogNormal(1, 0.5), DPrimeSpread.Discriminators(0.4, 3)];
        foreach (var spread in spreads)
        {
            var model = new SimulatedTasters(spread) { Guessing = 0.15, Fatigue = 0.2, NoShow = 0.1 };
            var run = Simulate.Panels(protocol, 50, 2000, seed: 21, model, replicates: 3);
            double exact = model.ExpectedCorrect(protocol, replicates: 3);
            // A taster's three answers go together, so the error is at most that of a third as many.
            double error = Math.Sqrt(exact * (1 - exact) / (run.Tastings / 3.0));
            Assert.True(Math.Abs(run.CorrectShare - exact) < Sigmas * error,
                $"{spread}: {run.CorrectShare:0.0000} against {exact:0.0000} ({error:0.0000})");
        }
    }

    [Fact]
    public void People_who_differ_make_repeats_spread_more_than_as_many_tasters_would()
    {
        var model = new SimulatedTasters(DPrimeSpread.Discriminators(0.5, 4));
        var repeats = Simulate.Panels(Protocol.Triangle, 2, 20_000, seed: 2, model, replicates: 10);
        var tasters = Simulate.Panels(Protocol.Triangle, 20, 20_000, seed: 2, model);
        Assert.InRange(repeats.Mean - tasters.Mean, -0.2, 0.2);
        Assert.True(repeats.Variance > 3 * tasters.Variance, $"{repeats.Variance:0.0} against {tasters.Variance:0.0}");
    }

    [Fact]
    public void A_first_cup_that_seems_stronger_lowers_what_the_triangle_shows_and_fools_a_directional_pair_in_one_order()
    {
        var level = new SimulatedTasters(DPrimeSpread.Same(1.5));
        var lifted = level with { FirstCupLift = 2 };
        double plain = Simulate.Panels(Protocol.Triangle, 30, 1000, seed: 8, level).CorrectShare;
        double bent = Simulate.Panels(Protocol.Triangle, 30, 1000, seed: 8, lifted).CorrectShare;
        Assert.True(bent < plain - 0.03, $"{bent:0.000} against {plain:0.000}");

        var plan = ServingPlan.Balanced(Protocol.PairedDirectional, 1000, seed: 1);
        var panel = plan.Score(plan.Ballots(lifted, seed: 2));
        double b = Right("BA"), a = Right("AB");
        // Exact: P(B first seems stronger) = Phi((1.5 + 2) / sqrt 2), P(B second does) = Phi((1.5 - 2) / sqrt 2).
        Assert.InRange(b - Gauss.Below(3.5 / Math.Sqrt(2)), -0.03, 0.03);
        Assert.InRange(a - Gauss.Below(-0.5 / Math.Sqrt(2)), -0.11, 0.11);
        double Right(string order) => panel.Ballots.Where(ballot => ballot.Set!.Order.Text == order)
            .Average(ballot => ballot.IsCorrect ? 1.0 : 0);
    }

    [Fact]
    public void Guesses_that_favour_the_first_cup_stay_at_chance_in_a_balanced_plan()
    {
        var model = new SimulatedTasters(DPrimeSpread.Same(3)) { Guessing = 1, FavouredShare = 0.9 };
        var plan = ServingPlan.Balanced(Protocol.Triangle, 900, seed: 1);
        var panel = plan.Score(plan.Ballots(model, seed: 2));
        Assert.InRange(panel.Correct, 300 - 75, 300 + 75);
        double first = panel.Ballots.Average(ballot => ballot.Answer!.Cups[0].Position == 1 ? 1.0 : 0);
        Assert.InRange(first, 0.90, 0.97);
    }

    [Fact]
    public void Who_leaves_or_never_comes_is_missing_from_the_ballots()
    {
        var model = new SimulatedTasters(DPrimeSpread.Same(1)) { NoShow = 0.2, DropOut = 0.5 };
        var plan = ServingPlan.Balanced(Protocol.Triangle, 500, seed: 1, replicates: 2);
        var panel = plan.Score(plan.Ballots(model, seed: 2));
        Assert.InRange(panel.Returned, 600 - 70, 600 + 70);
        Assert.Equal(1000, panel.Returned + panel.Missing.Count);
        Assert.Empty(panel.Remarkable);
        var run = Simulate.Panels(Protocol.Triangle, 500, 200, seed: 1, model, replicates: 2);
        Assert.InRange(run.Tastings / 200.0, 600 - 5, 600 + 5);
    }

    [Fact]
    public void Simulated_ballots_repeat_with_their_seed()
    {
        var plan = ServingPlan.Balanced(Protocol.TwoOutOfFive, 30, seed: 1);
        var model = new SimulatedTasters(DPrimeSpread.Normal(1, 0.5)) { Guessing = 0.1 };
        Assert.Equal(plan.Ballots(model, 5), plan.Ballots(model, 5));
        Assert.NotEqual(plan.Ballots(model, 5), plan.Ballots(model, 6));
    }

    [Fact]
    public void Settings_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SimulatedTasters.Guessers with { Guessing = 1.2 });
        Assert.Throws<ArgumentOutOfRangeException>(() => DPrimeSpread.Same(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => DPrimeSpread.Discriminators(30));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulate.Panels(Protocol.Triangle, 0, 100, seed: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Simulate.Tastings(Protocol.Triangle, double.NaN, 100, seed: 1));
    }

    [Fact]
    public void A_model_reads_as_words() => Assert.Equal(
        "d-prime varies about 1 with standard deviation 0.5; 10 % of the answers are guesses; each further set loses 5 % of d-prime",
        (new SimulatedTasters(DPrimeSpread.Normal(1, 0.5)) { Guessing = 0.1, Fatigue = 0.05 }).ToString());
}
