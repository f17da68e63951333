using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel;

/// <summary>Every number that a public docstring bounds is refused outside its bounds, by the parameter's own name.</summary>
public class RefusedNumbersTests
{
    private static readonly Protocol Triangle = Protocol.Triangle;

    [Fact]
    public void Exact_tails_refuse_negative_trials_and_what_is_no_share()
    {
        Func<int, int, double, double>[] tails =
            [ExactBinomial.Exactly, ExactBinomial.AtLeast, ExactBinomial.AtMost, ExactBinomial.LogExactly, ExactBinomial.LogAtLeast,
                ExactBinomial.LogAtMost];
        foreach (var tail in tails)
        {
            Refused("trials", -1, () => tail(0, -1, 0.5));
            Refused("share", 1.5, () => tail(1, 3, 1.5));
            Refused("share", -0.5, () => tail(1, 3, -0.5));
        }

        Refused("trials", -1, () => ExactBinomial.CriticalCount(-1, 0.5, 0.05));
        Refused("share", 1.5, () => ExactBinomial.CriticalCount(0, 1.5, 0.05));
        Refused("alpha", 1, () => ExactBinomial.CriticalCount(10, 0.5, 1));
        Refused("alpha", 0, () => ExactBinomial.CriticalCount(10, 0.5, 0));
        Refused("trials", -1, () => ExactBinomial.LargestCount(-1, 0.5, 0.05));
        Refused("share", 1.5, () => ExactBinomial.LargestCount(0, 1.5, 0.05));
        Refused("beta", 1, () => ExactBinomial.LargestCount(10, 0.5, 1));
    }

    [Fact]
    public void Counts_and_power_refuse_no_tasters_and_errors_of_nought_or_one()
    {
        Refused("tasters", 0, () => Power.CriticalCount(Triangle, 0));
        Refused("alpha", 1, () => Power.CriticalCount(Triangle, 10, 1));
        Refused("tasters", 0, () => Power.SimilarityCount(Triangle, 0, 0.3));
        Refused("margin", 0, () => Power.SimilarityCount(Triangle, 10, 0));
        Refused("margin", 1, () => Power.SimilarityCount(Triangle, 10, 1));
        Refused("beta", 0, () => Power.SimilarityCount(Triangle, 10, 0.3, 0));
        Refused("discriminators", 1.5, () => Power.Of(Triangle, 20, 0.05, 1.5));
        // A test is two-sided at alpha / 2 on each side: alpha itself, and not its half, is what must be a share.
        Refused("alpha", 1.5, () => Power.CriticalCount(Protocol.PairedTwoSided, 20, 1.5));
    }

    [Fact]
    public void Panel_sizes_refuse_impossible_aims()
    {
        Refused("alpha", 1, () => Power.TastersNeeded(Triangle, 1, 0.8, 0.3));
        Refused("power", 1, () => Power.TastersNeeded(Triangle, 0.05, 1, 0.3));
        Refused("discriminators", 0, () => Power.TastersNeeded(Triangle, 0.05, 0.8, 0));
        Refused("discriminators", 1.5, () => Power.TastersNeeded(Triangle, 0.05, 0.8, 1.5));
        Refused("alpha", 1.5, () => Power.TastersNeeded(Protocol.PairedTwoSided, 1.5, 0.8, 0.3));
        Refused("dPrime", 0, () => Power.TastersNeededForDPrime(Triangle, 0.05, 0.8, 0));
        Refused("beta", 1, () => Power.TastersNeededForSimilarity(Triangle, 1, 0.8, 0.3));
        Refused("power", 0, () => Power.TastersNeededForSimilarity(Triangle, 0.05, 0, 0.3));
        Refused("margin", 0, () => Power.TastersNeededForSimilarity(Triangle, 0.05, 0.8, 0));
        Refused("margin", 1, () => Power.TastersNeededForSimilarity(Triangle, 0.05, 0.8, 1));
        Refused("alpha", 0, () => Power.TastersThatSettle(Triangle, 0, 0.3));
        Refused("alpha", 1.5, () => Power.TastersThatSettle(Protocol.PairedTwoSided, 1.5, 0.3));
        Refused("beta", 0, () => Power.TastersThatSettle(Triangle, 0.05, 0.3, 0));
        Refused("margin", 1, () => Power.TastersThatSettle(Triangle, 0.05, 1));
    }

    [Fact]
    public void The_table_and_the_curves_refuse_what_they_cannot_hold()
    {
        Refused("alpha", 1, () => TastersTable.Of(Triangle, [1], [0.8], [0.3]));
        Refused("power", 1, () => TastersTable.Of(Triangle, [0.05], [1], [0.3]));
        Refused("discriminators", 0, () => TastersTable.Of(Triangle, [0.05], [0.8], [0]));
        Refused("discriminators", 1.5, () => TastersTable.Of(Triangle, [0.05], [0.8], [1.5]));
        Refused("largest", 0, () => TastersTable.Of(Triangle, [0.05], [0.8], [0.3], largest: 0));
        Refused("from", 0, () => PowerCurve.OverTasters(Triangle, 0.05, 0.3, 0, 10));
        Refused("to", 9, () => PowerCurve.OverTasters(Triangle, 0.05, 0.3, 10, 9));
        Refused("points", 1, () => PowerCurve.OverDiscriminators(Triangle, 10, 0.05, points: 1));
        Refused("power", 1, () => PanelReach.Of(Triangle, 10, power: 1));
        Refused("beta", 0, () => PanelReach.Of(Triangle, 10, beta: 0));
        Refused("alpha", 1, () => EarlyLooks.At(Triangle, 1, 10, 20));
        Refused("look", 0, () => EarlyLooks.At(Triangle, 0.05, 0, 20));
        Assert.Throws<ArgumentException>(() => EarlyLooks.At(Triangle, 0.05));
        Assert.Throws<ArgumentException>(() => EarlyLooks.At(Triangle, 0.05, 10, 10));
    }

    [Fact]
    public void Tests_and_intervals_refuse_levels_that_are_no_shares()
    {
        Refused("alpha", 1, () => DifferenceTest.Of(Triangle, 20, 10, alpha: 1));
        Refused("level", 1, () => DifferenceTest.Of(Triangle, 20, 10, level: 1));
        Refused("margin", 1, () => SimilarityTest.Of(Triangle, 20, 10, margin: 1));
        Refused("beta", 0, () => SimilarityTest.Of(Triangle, 20, 10, margin: 0.3, beta: 0));
        Refused("level", 1, () => ShareIntervals.ClopperPearson(3, 10, 1));
        Refused("level", 0, () => ShareIntervals.Wilson(3, 10, 0));
        Refused("level", 1, () => ShareIntervals.Jeffreys(3, 10, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShareIntervals.UpperLimit(3, 10, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShareIntervals.LowerLimit(11, 10, 0.05));
        Refused("correctShare", 1.5, () => Triangle.DPrime(1.5));
        Refused("correctShare", -0.5, () => Triangle.DPrime(-0.5));
        Refused("correctShare", 1.5, () => Triangle.Discriminators(1.5));
        Refused("dPrime", -1, () => Triangle.CorrectShare(-1));
        Refused("dPrime", -1, () => Triangle.Slope(-1));
        Refused("pValues", 1.5, () => Holm.Adjust([0.1, 1.5]));
        Assert.Throws<ArgumentException>(() => SignedRanks.Of([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SignedRanks.Of(Enumerable.Range(1, 1001).Select(i => (double)i)));
    }

    [Fact]
    public void Sequential_plans_refuse_errors_of_a_half_and_margins_that_are_none()
    {
        Refused("none", -0.5, () => WaldPlan.Of(Triangle, 0.3, none: -0.5));
        Refused("margin", 0.2, () => WaldPlan.Of(Triangle, 0.2, none: 0.2));
        Refused("margin", 1, () => WaldPlan.Of(Triangle, 1));
        Refused("alpha", 0, () => WaldPlan.Of(Triangle, 0.3, alpha: 0));
        Refused("alpha", 0.5, () => WaldPlan.Of(Triangle, 0.3, alpha: 0.5));
        Refused("beta", 0, () => WaldPlan.Of(Triangle, 0.3, beta: 0));
        Refused("beta", 0.5, () => WaldPlan.Of(Triangle, 0.3, beta: 0.5));
        Refused("lastTaster", 0, () => WaldPlan.Of(Triangle, 0.3, lastTaster: 0));
        var plan = WaldPlan.Of(Triangle, 0.3);
        Refused("tasters", -1, () => plan.SimilarAt(-1));
        Refused("tasters", -1, () => plan.DifferentAt(-1));
        Refused("points", 1, () => plan.Curve(1));
        Assert.Throws<ArgumentException>(() => WaldPlan.Of(Protocol.PairedTwoSided, 0.3));
    }

    [Fact]
    public void Repeats_priors_and_yes_no_panels_refuse_what_is_out_of_range()
    {
        var repeats = ReplicatedTest.Of(Triangle, Enumerable.Repeat(new TasterCount(4, 2), 6));
        Refused("tail", 0, () => repeats.StillAllowed(0));
        Refused("tail", 0.5, () => repeats.StillAllowed(0.5));
        Refused("level", 1, () => repeats.DiscriminatorsInterval(1));
        Refused("chance", 1, () => BetaBinomialFit.Of([new TasterCount(4, 2)], 1));
        Refused("sets", -1, () => new BetaBinomial(0.5, 0.1).Probability(0, -1));
        Refused("setsPerTaster", 0.5, () => new BetaBinomial(0.5, 0.1).DesignEffect(0.5));
        Refused("margin", 1, () => BayesReading.Of(Triangle, 18, 8, 1));
        Refused("priorA", 0, () => BayesReading.Of(Triangle, 18, 8, 0.3, priorA: 0));
        Refused("priorB", 0, () => BayesReading.Of(Triangle, 18, 8, 0.3, priorB: 0));
        var reading = BayesReading.Of(Triangle, 18, 8, 0.3);
        Refused("discriminators", 1.5, () => reading.ChanceAbove(1.5));
        Refused("level", 1, () => reading.Credible(1));
        Refused("points", 1, () => reading.Density(1));
        Refused("setsOfEither", 0, () => YesNoPower.Of(0, 0.05, 0.7, 0.3));
        Refused("alpha", 1, () => YesNoPower.Of(10, 1, 0.7, 0.3));
        Refused("hitRate", 1.5, () => YesNoPower.Of(10, 0.05, 1.5, 0.3));
        Refused("falseAlarmRate", -0.5, () => YesNoPower.Of(10, 0.05, 0.7, -0.5));
        Refused("power", 1, () => YesNoPower.SetsNeeded(Protocol.ANotA, 0.05, 1, 1));
        Refused("dPrime", 0.1, () => YesNoPower.SetsNeeded(Protocol.ANotA, 0.05, 0.8, 0.1));
        Refused("alpha", 1, () => YesNoTest.Of(Protocol.ANotA, 5, 10, 3, 10, alpha: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => YesNoTest.Of(Protocol.ANotA, 11, 10, 3, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => YesNoTest.Of(Protocol.ANotA, 5, 10, 11, 10));
        Refused("alpha", 0, () => PreferenceTest.Of(5, 5, 0, 0));
    }

    private static void Refused(string name, double value, Func<object?> ask)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(ask);
        Assert.StartsWith(FormattableString.Invariant($"{name} is {value}; it must be "), error.Message, StringComparison.Ordinal);
        Assert.Equal(name, error.ParamName);
    }
}
