using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>The numbers in what the bitterness room says of itself.</summary>
public class BitternessSentencesTests
{
    private static readonly Kettle Kettle = Kettle.Metric(20, 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5), Pellets = HopLot.Pellets("pellets", 10);

    [Fact]
    public void An_estimate_counts_its_warnings()
    {
        string Of(Kettle kettle, double minutes) =>
            BitternessEstimate.Of(kettle, [HopCharge.Boil(Cones, Mass.FromGrams(40), minutes)], new Garetz()).ToString();
        Assert.EndsWith("end of a 60 min boil", Of(Kettle, 60), StringComparison.Ordinal);
        Assert.EndsWith("; 1 warning", Of(Kettle.Metric(20, 1.125), 60), StringComparison.Ordinal);
        Assert.EndsWith("; 2 warnings", Of(Kettle.Metric(20, 1.125, boilMinutes: 240), 240), StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_and_terms_speak_in_percent()
    {
        var row = Assert.Single(BitternessEstimate.Of(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(40), 60)]).Charges);
        Assert.Equal(FormattableString.Invariant($"40.0 g cones, 60 min in the boil: {100 * Tinseth.Utilisation(1.050, 60):0.0} % used, ")
            + FormattableString.Invariant($"{row.Bitterness}"), row.ToString());
        ErrorTerm shared = new("gauge", ErrorKind.Volume, 0.015, Sharing.Shared),
            own = new("reading", ErrorKind.Reading, 0.29, Sharing.Independent);
        Assert.Equal(["gauge: 1.5 %, shared", "reading: 0.29 g, independent"], new[] { shared, own }.Select(term => term.ToString()));
        Assert.Equal("gravity: 1 gravity points, shared", new ErrorTerm("gravity", ErrorKind.Gravity, 1, Sharing.Shared).ToString());
        Assert.Equal("time: 0.5 min, shared", new ErrorTerm("time", ErrorKind.Minutes, 0.5, Sharing.Shared).ToString());
        Assert.Equal("gauge (shared): 0.5 IBU of the difference, 25 % of its variance",
            new Contribution(shared, 1, 1.5, 0.5, 0.25).ToString());
        Assert.Equal("reading (independent): 0.5 IBU of the difference, 25 % of its variance",
            new Contribution(own, 1, 1.5, 0.5, 0.25).ToString());
    }

    [Fact]
    public void Bitterness_is_in_order()
    {
        BitternessUnits less = BitternessUnits.From(20), more = BitternessUnits.From(30), same = BitternessUnits.From(20);
        Assert.True(less < more && more > less && less <= more && more >= less && less <= same && less >= same);
        Assert.False(less > more || more < less || less >= more || more <= less || less < same || less > same);
        Assert.True(less.CompareTo(more) < 0);
    }

    [Theory]
    [InlineData(1, "1 batch: measured bitterness was 0.60 times the estimate on average; with so few, 0.71 is used. ",
        " One batch cannot tell the house's habit from that batch's luck.")]
    [InlineData(4, "4 batches: measured bitterness was 0.60 times the estimate on average; with so few, 0.64 is used. ",
        " So few batches cannot tell whether the factor changes with hop form, gravity or hop rate; it is not to be used for beers "
            + "unlike these.")]
    [InlineData(5, "5 batches: measured bitterness was 0.60 times the estimate on average; with so few, 0.63 is used. ",
        " The factor holds for beers like these; a new hop form, strength or kettle needs its own returns.")]
    [InlineData(30, "30 batches: measured bitterness was 0.60 times the estimate on average; 0.61 is used. ",
        " The factor holds for beers like these; a new hop form, strength or kettle needs its own returns.")]
    public void What_a_house_has_learnt_is_told_by_how_many_batches_it_has(int batches, string start, string end)
    {
        var house = HouseCalibration.Fit(Enumerable.Range(1, batches).Select(i => new CalibrationPair($"{i}", 40, 24)));
        Assert.StartsWith(start, house.Statement, StringComparison.Ordinal);
        Assert.EndsWith(end, house.Statement, StringComparison.Ordinal);
        var next = house.Correct(30).Interval;
        Assert.Contains(FormattableString.Invariant($"A next batch estimated at 30 IBU would be measured between {next.Low:0} and ")
            + FormattableString.Invariant($"{next.High:0} IBU, 90 times in 100."), house.Statement, StringComparison.Ordinal);
        Assert.Equal(FormattableString.Invariant($"This house measures {house.Factor:0.00} of its estimates (90 %: ")
            + FormattableString.Invariant($"{house.FactorInterval.Low:0.00} to {house.FactorInterval.High:0.00}), from {batches} ")
            + FormattableString.Invariant($"{(batches > 1 ? "batches" : "batch")}."), house.ToString());
    }

    /// <summary>
    /// Half the weight is reached at the prior's half batch; 19 to 1 at 9.5 batches with it, so 10 are more than enough and 9 are not.
    /// </summary>
    [Fact]
    public void So_few_means_less_than_nineteen_twentieths_of_the_weight()
    {
        HouseCalibration Of(int batches, double prior) =>
            HouseCalibration.Fit(Enumerable.Range(1, batches).Select(i => new CalibrationPair($"{i}", 40, 24)),
                new CalibrationPrior(Batches: prior));
        Assert.Contains("with so few", Of(9, 0.5).Statement, StringComparison.Ordinal);
        Assert.DoesNotContain("with so few", Of(10, 0.5).Statement, StringComparison.Ordinal);
        Assert.DoesNotContain("with so few", Of(19, 1).Statement, StringComparison.Ordinal);
    }

    /// <summary>
    /// Two batches at 0.6 and one at 0.8 of the estimate: errors by hand from the logarithms, the prior's half batch at no correction.
    /// </summary>
    [Fact]
    public void A_house_tells_its_errors_in_percent_and_which_way_the_estimate_errs()
    {
        CalibrationPair[] pairs = [new("1", 40, 24), new("2", 40, 24), new("3", 30, 24)];
        var house = HouseCalibration.Fit(pairs, level: 0.8);
        double low = Math.Log(0.6), high = Math.Log(0.8);
        double[] left = [low - ((low + high) / 2.5), low - ((low + high) / 2.5), high - (2 * low / 2.5)];
        var error = Math.Sqrt(left.Sum(x => x * x) / 3);
        var plain = Math.Sqrt(((2 * low * low) + (high * high)) / 3);
        Assert.Equal(error, house.LeaveOneOutError!.Value, 1e-12);
        Assert.Equal(plain, house.UncorrectedError!.Value, 1e-12);
        Assert.Contains(FormattableString.Invariant($"Each batch predicted from the others was off by about ")
            + FormattableString.Invariant($"{100 * (Math.Exp(error) - 1):0} %, against {100 * (Math.Exp(plain) - 1):0} % for the ")
            + FormattableString.Invariant($"published estimate. "), house.Statement, StringComparison.Ordinal);
        Assert.Contains("80 times in 100. ", house.Statement, StringComparison.Ordinal);
        Assert.Equal(24 - (40 * Math.Exp((low + high) / 2.5)), house.Points[0].Error, 1e-9);
        Assert.Equal(30 * house.Factor, house.Points[2].Fitted, 1e-9);

        string Many(double measured) =>
            HouseCalibration.Fit(Enumerable.Range(1, 20).Select(i => new CalibrationPair($"{i}", 40, measured))).Statement;
        Assert.Contains("These returns show that the published estimate is too high on average here.", Many(24), StringComparison.Ordinal);
        Assert.Contains("These returns show that the published estimate is too low on average here.", Many(60), StringComparison.Ordinal);
        Assert.Contains("These returns do not rule out that the published estimate is right on average.", Many(40),
            StringComparison.Ordinal);
        Assert.Contains(": so far the correction does not help.", Many(40), StringComparison.Ordinal);
    }

    /// <summary>The scatter holds each batch about the mean, and the mean about what was expected: by hand for another prior.</summary>
    [Fact]
    public void A_prior_of_ones_own_is_used_throughout()
    {
        var prior = new CalibrationPrior(Factor: 0.7, Batches: 2, Scatter: 0.3, ScatterBatches: 4);
        var house = HouseCalibration.Fit([new("1", 40, 24), new("2", 40, 36), new("3", 40, 28)], prior);
        double[] logs = [Math.Log(0.6), Math.Log(0.9), Math.Log(0.7)];
        double raw = logs.Average(), expected = Math.Log(0.7), mean = ((2 * expected) + (3 * raw)) / 5;
        Assert.Equal(Math.Exp(mean), house.Factor, 1e-12);
        var squares = (4 * 0.3 * 0.3) + logs.Sum(log => (log - raw) * (log - raw)) + (2.0 * 3 / 5 * (raw - expected) * (raw - expected));
        Assert.Equal(Math.Sqrt(squares / 7), house.Scatter, 1e-12);
        Assert.Equal("factor 0.70 worth 2 batches, scatter 30 % worth 4 batches", house.Prior.ToString());
        Assert.Equal("No batches yet: estimates stand as published.", HouseCalibration.Fit([]).ToString());
        var estimate = BitternessEstimate.Of(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(40), 60)]);
        Assert.Equal(estimate.Value.Value * house.Factor, house.Correct(estimate).Corrected, 1e-9);
    }

    [Fact]
    public void A_corrected_estimate_and_a_target_say_their_level_and_their_batches()
    {
        var one = HouseCalibration.Fit([new("1", 40, 24)]);
        Assert.EndsWith("(90 %)", one.Correct(30).ToString(), StringComparison.Ordinal);
        Assert.Contains("corrected for this house, from 1 batch; 30.0 by the formula", one.Correct(30).ToString(),
            StringComparison.Ordinal);
        Assert.EndsWith("(90 %)", one.EstimateFor(30).ToString(), StringComparison.Ordinal);
        Assert.Contains("from 2 batches)", HouseCalibration.Fit([new("1", 40, 24), new("2", 40, 24)]).EstimateFor(30).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_match_says_which_half_carries_more()
    {
        Assert.EndsWith("more plant matter", ChargeMatch.Solve(Kettle, 30, Cones, Pellets).ToString(), StringComparison.Ordinal);
        Assert.EndsWith("less plant matter", ChargeMatch.Solve(Kettle, 30, Pellets, Cones).ToString(), StringComparison.Ordinal);
        var even = ChargeMatch.AsGiven(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(40), 60)],
            [HopCharge.Boil(Cones, Mass.FromGrams(40), 60)]);
        Assert.EndsWith("0 g more plant matter", even.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_half_adds_its_charges_in_the_unit_of_the_first()
    {
        HopLot priced = Cones with { PricePerKilogram = 40 }, dear = Pellets with { PricePerKilogram = 100 };
        var half = ChargeMatch.AsGiven(Kettle,
            [HopCharge.Boil(priced, Mass.FromGrams(50), 60), HopCharge.Boil(dear, Mass.FromGrams(20), 15)],
            [HopCharge.Boil(priced, Mass.FromOunces(2), 60), HopCharge.Boil(Pellets, Mass.FromOunces(1), 15)]);
        Assert.Equal(70, half.A.HopMass.Grams, 1e-9);
        Assert.Equal((50 * 0.05) + (20 * 0.1), half.A.AlphaMass.Grams, 1e-9);
        Assert.Equal(2.00m + 2.00m, half.A.Cost);
        Assert.Null(half.B.Cost);
        Assert.Null(half.ExtraCost);
        Assert.Contains("; 4.50 g alpha acid, ", half.A.ToString(), StringComparison.Ordinal);
        Assert.Contains("; 0.200 oz alpha acid, ", half.B.ToString(), StringComparison.Ordinal);
        Assert.Equal(0,
            ChargeMatch.AsGiven(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(0), 60)],
                [HopCharge.Boil(Cones, Mass.FromGrams(0), 60)]).A.HopMass.Grams);
    }
}
