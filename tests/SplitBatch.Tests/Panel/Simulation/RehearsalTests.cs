using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Simulation;

public class RehearsalTests
{
    private static readonly PanelPlan Plan = new(Protocol.Triangle, 30) { Margin = 0.30, Beta = 0.10 };

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.15)]
    [InlineData(0.30)]
    public void Simulated_answers_come_as_often_as_the_exact_binomial_says(double discriminators)
    {
        const int panels = 40_000;
        var rehearsal = Plan.Rehearse(new SimulatedTasters(DPrimeSpread.Discriminators(discriminators, dPrime: 60)), seed: 11, panels);
        double share = Protocol.Triangle.CorrectFromDiscriminators(discriminators);
        foreach (var answer in Enum.GetValues<PanelAnswer>())
        {
            double exact = Enumerable.Range(0, 31)
                .Where(count => PanelReading.Of(Protocol.Triangle, 30, count, 0.30, 0.05, 0.10).Answer == answer)
                .Sum(count => ExactBinomial.Exactly(count, 30, share));
            Assert.InRange(rehearsal.Shares[answer], exact - Error(exact), exact + Error(exact));
        }

        Assert.Equal(1, rehearsal.Shares.Values.Sum(), 1e-9);
        Assert.InRange(rehearsal.ShowingADifference, Power.Of(Protocol.Triangle, 30, 0.05, discriminators) - 0.012,
            Power.Of(Protocol.Triangle, 30, 0.05, discriminators) + 0.012);

        double Error(double p) => (5 * Math.Sqrt(p * (1 - p) / panels)) + 1e-9;
    }

    [Fact]
    public void Those_who_do_not_come_make_a_panel_smaller_and_a_difference_rarer()
    {
        var some = new SimulatedTasters(DPrimeSpread.Discriminators(0.30, dPrime: 60));
        double all = Plan.Rehearse(some, seed: 12).ShowingADifference,
            fewer = Plan.Rehearse(some with { NoShow = 0.4 }, seed: 12).ShowingADifference;
        Assert.True(fewer < all - 0.1, $"{fewer:0.000} against {all:0.000}");
    }

    [Fact]
    public void A_plan_with_repeats_or_without_a_guessing_chance_is_refused()
    {
        Assert.Contains("taster by taster",
            Assert.Throws<InvalidOperationException>(() => (Plan with { Replicates = 2 }).Rehearse(null, seed: 1)).Message,
            StringComparison.Ordinal);
        Assert.Throws<NotApplicableException>(() => new PanelPlan(Protocol.ANotA, 20).Rehearse(null, seed: 1));
    }

    [Fact]
    public void A_rehearsal_reads_as_a_sentence() => Assert.Matches(
        @"^If nobody can tell: [\d.]+ % of panels show a difference, [\d.]+ % rule the margin out without one, [\d.]+ % settle nothing "
            + @"\(10,000 panels, seed 1\)\.$",
        Plan.Rehearse(null, seed: 1).ToString());

    [Fact]
    public void Exact_chances_are_given_where_answers_do_not_hang_together()
    {
        var half = new SimulatedTasters(DPrimeSpread.Discriminators(0.5, dPrime: 60));
        var once = Simulate.Panels(Protocol.Triangle, 20, 20_000, seed: 5, half);
        for (int k = 0; k <= 20; k++)
        {
            double exact = ExactBinomial.Exactly(k, 20, 2 / 3.0);
            Assert.Equal(exact, once.ExactChances![k], 1e-9);
            Assert.InRange(once.Exactly(k), exact - (5 * Math.Sqrt(exact / 20_000)) - 1e-4,
                exact + (5 * Math.Sqrt(exact / 20_000)) + 1e-4);
        }

        Assert.Null(Simulate.Panels(Protocol.Triangle, 2, 100, seed: 5, half, replicates: 10).ExactChances);
        Assert.NotNull(Simulate.Panels(Protocol.Triangle, 2, 100, seed: 5, replicates: 10).ExactChances);
        Assert.Null(Simulate.Panels(Protocol.Triangle, 20, 100, seed: 5, half with { NoShow = 0.1 }).ExactChances);
        Assert.Null(Simulate.Panels(Protocol.Triangle, 20, 100, seed: 5, half with { FirstCupLift = 0.1 }).ExactChances);
    }
}
