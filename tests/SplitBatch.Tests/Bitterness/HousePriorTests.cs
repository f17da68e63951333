namespace SplitBatch.Bitterness;

/// <summary>The closed form behind a house's factor, by hand, with Student's t from printed tables.</summary>
public class HousePriorTests
{
    private static readonly CalibrationPrior Prior = new();

    /// <summary>
    /// Student's t, 95 % one-sided: 2.353 at 3 and 2.015 at 5 degrees of freedom (printed tables; further digits with R's qt).
    /// </summary>
    private const double T3 = 2.353363435, T5 = 2.015048373;

    [Fact]
    public void Without_batches_the_prior_speaks()
    {
        var house = HouseCalibration.Fit([]);
        Assert.Equal((0, 1.0, 0.0), (house.Batches, house.Factor, house.OwnWeight));
        Assert.Null(house.RawFactor);
        Assert.Null(house.UncorrectedError);
        Assert.Null(house.LeaveOneOutError);
        Assert.Equal(0.25, house.Scatter, 1e-12);
        Assert.Equal(Math.Exp(T3 * 0.25 / Math.Sqrt(0.5)), house.FactorInterval.High, 1e-7);
        Assert.Equal(Math.Exp(-T3 * 0.25 / Math.Sqrt(0.5)), house.FactorInterval.Low, 1e-7);
        Assert.Equal(40 * Math.Exp(T3 * Math.Sqrt(0.0625 + 0.125)), house.Correct(40).Interval.High, 1e-5);
    }

    [Fact]
    public void Halves_that_agree_are_one_beer_of_that_ratio()
    {
        HouseCalibration halves = HouseCalibration.Fit([new("one", 30, 24), new("one", 20, 16), new("two", 30, 21)]),
            beers = HouseCalibration.Fit([new("one", 30, 24), new("two", 30, 21)]);
        Assert.Equal(beers.Factor, halves.Factor, 1e-12);
        Assert.Equal(beers.Correct(30).Interval.High, halves.Correct(30).Interval.High, 1e-9);
        Assert.Equal(beers.FactorInterval.Low, halves.FactorInterval.Low, 1e-12);
    }

    /// <summary>
    /// What the mean of several halves hides from one beer: the variance of logarithms within batches, less its share in the mean.
    /// </summary>
    [Fact]
    public void Halves_that_differ_widen_the_prediction_of_one_beer_and_nothing_else()
    {
        const double apart = 0.3;
        CalibrationPair[] split =
        [
            new("one", 30, 24 * Math.Exp(apart / 2)), new("one", 30, 24 * Math.Exp(-apart / 2)),
            new("two", 30, 21 * Math.Exp(apart / 4)), new("two", 30, 21 * Math.Exp(-apart / 4)),
        ];
        HouseCalibration halves = HouseCalibration.Fit(split), beers = HouseCalibration.Fit([new("one", 30, 24), new("two", 30, 21)]);
        Assert.Equal(beers.Factor, halves.Factor, 1e-12);
        Assert.Equal(beers.Scatter, halves.Scatter, 1e-12);
        Assert.Equal(beers.FactorInterval.Low, halves.FactorInterval.Low, 1e-12);
        // Each batch's two logarithms have the variance apart^2 / 2; a mean of two hides half of it.
        var within = ((apart * apart / 2) + (apart * apart / 8)) / 2;
        Assert.Equal(within / 2, Variance(halves) - Variance(beers), 1e-7);
        // One batch of two and one of one: one spare degree of freedom, and a quarter is hidden on average.
        var mixed = HouseCalibration.Fit([split[0], split[1], new("two", 30, 21)]);
        Assert.Equal(apart * apart / 2 / 4, Variance(mixed) - Variance(beers), 1e-7);

        static double Variance(HouseCalibration house) => Math.Pow(Math.Log(house.Correct(1).Interval.High / house.Factor) / T5, 2);
    }

    /// <summary>
    /// Two batches a factor of 0.8 and of 1.25: their mean is no correction, each is off by ln 1.25, and each foretells the other wrongly.
    /// </summary>
    [Fact]
    public void Errors_with_and_without_correction_are_those_found_by_hand()
    {
        var house = HouseCalibration.Fit([new("one", 30, 24), new("two", 30, 37.5)]);
        var off = Math.Log(1.25);
        Assert.Equal(1, house.Factor, 1e-12);
        Assert.Equal(1, house.RawFactor!.Value, 1e-12);
        Assert.Equal(off, house.UncorrectedError!.Value, 1e-12);
        // Left out, the other's logarithm counts 1 against the prior's half: two thirds of it.
        Assert.Equal(off * 5 / 3, house.LeaveOneOutError!.Value, 1e-12);
        Assert.Equal(2 / 2.5, house.OwnWeight, 1e-12);
        Assert.Equal(Math.Sqrt(((Prior.ScatterBatches * Prior.Scatter * Prior.Scatter) + (2 * off * off)) / 5), house.Scatter, 1e-12);
        Assert.Equal(30, house.Points[0].Fitted, 1e-9);
        Assert.Contains("the correction does not help", house.Statement, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => HouseCalibration.Fit([], level: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => house.Correct(0));
    }
}
