namespace SplitBatch.Bitterness;

public class HouseCalibrationTests
{
    /// <summary>Made up: four beers, two of which came out a fifth below their estimates and two a third.</summary>
    private static readonly CalibrationPair[] Gap =
    [
        new("first", 36, 29.9), new("second", 36, 28.4), new("third", 29, 18.0), new("fourth", 29, 19.1),
    ];

    [Fact]
    public void Without_batches_an_estimate_stands_and_says_so()
    {
        var estimate = HouseCalibration.Fit([]).Correct(30);
        Assert.Equal(30, estimate.Corrected);
        Assert.Equal("not corrected: no batches of this house yet", estimate.Label);
    }

    [Fact]
    public void The_factor_is_held_back_while_batches_are_few_and_let_go_as_they_come()
    {
        var one = HouseCalibration.Fit([new("1", 40, 24)]);
        var many = HouseCalibration.Fit(Enumerable.Range(1, 50).Select(i => new CalibrationPair($"{i}", 40, 24)));
        Assert.Equal(Math.Pow(0.6, 1 / 1.5), one.Factor, 1e-12);
        Assert.InRange(many.Factor, 0.6, 0.605);
        Assert.Equal(0.6, one.RawFactor!.Value, 1e-12);
    }

    [Fact]
    public void A_corrected_estimate_is_always_labelled()
    {
        var text = HouseCalibration.Fit(Gap).Correct(32).ToString();
        Assert.Contains("corrected for this house, from 4 batches; 32.0 by the formula", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Leaving_one_batch_out_is_fitting_the_others()
    {
        var house = HouseCalibration.Fit(Gap);
        for (var i = 0; i < Gap.Length; i++)
        {
            var others = HouseCalibration.Fit(Gap.Where(pair => pair != Gap[i]));
            Assert.Equal(others.Correct(Gap[i].Estimated).Corrected, house.Points[i].LeftOut, 1e-12);
            Assert.Equal(others.Correct(Gap[i].Estimated).Interval, house.Points[i].Interval);
        }

        Assert.True(house.LeaveOneOutError < house.UncorrectedError);
    }

    [Fact]
    public void Two_halves_of_one_batch_count_as_one_batch()
    {
        var house = HouseCalibration.Fit([new("split", 30, 20), new("split", 30, 22)]);
        Assert.Equal(1, house.Batches);
        Assert.Null(house.LeaveOneOutError);
        Assert.Equal(Math.Sqrt(20.0 * 22) / 30, house.RawFactor!.Value, 1e-12);
    }

    [Fact]
    public void The_statement_says_what_a_handful_can_and_cannot_tell()
    {
        var statement = HouseCalibration.Fit(Gap).Statement;
        Assert.Contains("4 batches: measured bitterness was 0.72 times the estimate on average", statement, StringComparison.Ordinal);
        Assert.Contains("too high on average here", statement, StringComparison.Ordinal);
        Assert.Contains("cannot tell whether the factor changes", statement, StringComparison.Ordinal);
        Assert.Contains("One batch cannot tell the house's habit from that batch's luck.", HouseCalibration.Fit([Gap[0]]).Statement,
            StringComparison.Ordinal);
    }

    /// <summary>Houses as various as the prior expects: the 90 % interval must hold 90 % of next batches, few or many behind it.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(30)]
    public void The_90_percent_prediction_interval_holds_about_90_percent_over_many_houses(int batches)
    {
        var random = new Random(20260 + batches);
        var prior = new CalibrationPrior();
        var share = Coverage(random, batches, 4000, halves: 1, () =>
        {
            // Scaled inverse chi-square for the scatter, then the mean given the scatter.
            var chi = Enumerable.Range(0, (int)prior.ScatterBatches).Sum(_ => Math.Pow(Normal(random), 2));
            var scatter = prior.Scatter * Math.Sqrt(prior.ScatterBatches / chi);
            return (Normal(random) * scatter / Math.Sqrt(prior.Batches), scatter);
        });
        Assert.InRange(share, 0.885, 0.915);
    }

    /// <summary>Fixed houses, most of them far from what the prior expects.</summary>
    [Theory]
    [InlineData(0.9, 0.15, 3)]
    [InlineData(0.7, 0.25, 3)]
    [InlineData(0.45, 0.25, 3)]
    [InlineData(0.7, 0.25, 40)]
    [InlineData(0.45, 0.25, 40)]
    public void For_a_house_of_a_kind_the_interval_holds_85_percent_or_more(double factor, double scatter, int batches)
    {
        var share = Coverage(new Random(7), batches, 3000, halves: 1, () => (Math.Log(factor), scatter));
        Assert.InRange(share, 0.85, 0.995);
        if (batches == 40) Assert.InRange(share, 0.88, 0.92);
    }

    /// <summary>Two halves in each batch, which share most but not all of their error.</summary>
    [Fact]
    public void Split_batches_keep_the_coverage_for_a_single_beer() =>
        Assert.InRange(Coverage(new Random(11), 30, 3000, halves: 2, () => (Math.Log(0.7), 0.2)), 0.88, 0.92);

    private static double Coverage(Random random, int batches, int houses, int halves, Func<(double Mean, double Scatter)> house)
    {
        var held = 0;
        for (var i = 0; i < houses; i++)
        {
            var (mean, scatter) = house();
            var own = halves == 1 ? 0 : 0.1;
            double[] Batch()
            {
                var common = mean + scatter * Normal(random);
                return [.. Enumerable.Range(0, halves).Select(_ => 30 * Math.Exp(common + own * Normal(random)))];
            }

            var past = Enumerable.Range(0, batches).SelectMany(b => Batch().Select(value => new CalibrationPair($"{b}", 30, value)));
            if (HouseCalibration.Fit(past).Correct(30).Interval.Contains(Batch()[0])) held++;
        }

        return (double)held / houses;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
