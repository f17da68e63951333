using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>From what the laboratory should measure back to the estimate to dose to. All figures are invented.</summary>
public class HouseTargetTests
{
    private static readonly HouseCalibration House =
        HouseCalibration.Fit([new("spring", 34, 25), new("summer", 28, 23), new("autumn", 41, 27)]);

    [Fact]
    public void Dosing_to_it_and_correcting_again_returns_what_was_wanted()
    {
        var target = House.EstimateFor(measured: 26);
        var back = House.Correct(target.Estimate);
        Assert.Equal(26, back.Corrected, 1e-12);
        Assert.Equal(back.Interval, target.Interval);
        Assert.True(target.Interval.Contains(26));
        Assert.True(target.Estimate > 26);
    }

    [Fact]
    public void It_is_labelled_as_corrected_for_the_house_in_every_sentence()
    {
        var target = House.EstimateFor(26);
        Assert.Contains("(corrected for this house, from 3 batches)", target.ToString(), StringComparison.Ordinal);
        var match = ChargeMatch.Solve(Kettle.Metric(20, 1.050), target, HopLot.Cones("cones", 5.5), HopLot.Pellets("pellets", 9),
            scale: Mass.FromGrams(0.01));
        Assert.Equal(target, match.House);
        Assert.Equal(target.Estimate, match.A.Bitterness.Value, 0.01);
        Assert.EndsWith("dosed to measure 26.0 IBU (corrected for this house, from 3 batches)", match.ToString(),
            StringComparison.Ordinal);
        Assert.Null(ChargeMatch.Solve(Kettle.Metric(20, 1.050), 26, HopLot.Cones("cones", 5.5), HopLot.Pellets("pellets", 9)).House);
    }

    [Fact]
    public void Without_batches_it_is_the_wanted_value_and_says_so()
    {
        var target = HouseCalibration.Fit([]).EstimateFor(26);
        Assert.Equal(26, target.Estimate, 1e-12);
        Assert.Contains("not corrected: no batches of this house yet", target.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    public void A_wanted_value_that_is_no_bitterness_is_refused(double measured) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => House.EstimateFor(measured));

    /// <summary>
    /// A million houses are not needed: over 4000 houses as the prior expects them, a beer dosed to the target is measured inside its
    /// interval about 90 times in 100.
    /// </summary>
    [Fact]
    public void The_interval_of_a_beer_so_dosed_holds_about_90_percent()
    {
        var random = new Random(410);
        var prior = new CalibrationPrior();
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var held = 0;
        const int houses = 4000;
        for (var i = 0; i < houses; i++)
        {
            var chi = Enumerable.Range(0, (int)prior.ScatterBatches).Sum(_ => Math.Pow(Normal(), 2));
            var scatter = prior.Scatter * Math.Sqrt(prior.ScatterBatches / chi);
            var mean = Normal() * scatter / Math.Sqrt(prior.Batches);
            var past = Enumerable.Range(0, 3).Select(b => new CalibrationPair($"{b}", 30, 30 * Math.Exp(mean + scatter * Normal())));
            var target = HouseCalibration.Fit(past).EstimateFor(25);
            if (target.Interval.Contains(target.Estimate * Math.Exp(mean + scatter * Normal()))) held++;
        }

        Assert.InRange(held / (double)houses, 0.885, 0.915);
    }
}
