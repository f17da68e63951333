using static SplitBatch.Lab.LabReference;

namespace SplitBatch.Lab;

public class EstimateCheckTests
{
    private static readonly LabPrecision Known = new(Precision.StandardDeviation(0.6, PrecisionCondition.Repeatability),
        Precision.StandardDeviation(1.5, PrecisionCondition.Reproducibility));

    private static EstimateCheck Check(double labA, double labB, double correlation = 0.9, LabPrecision? precision = null) =>
        EstimateCheck.Of(
            new(Side.A, 32, 3.2, new Replicates("A", [labA - 0.2, labA + 0.2])),
            new(Side.B, 32, 3.2, new Replicates("B", [labB - 0.3, labB + 0.3])), correlation, precision ?? Known);

    [Fact]
    public void Ratios_and_their_intervals_agree_with_simulation_in_R()
    {
        var check = Check(26.4, 23.2);
        var rows = Rows("estimate-check.csv").Where(row => row[2].Length > 0)
            .ToDictionary(row => row[0], row => (Low: Number(row[1]), High: Number(row[2])));
        foreach (var (name, interval) in new[] { ("ratio A", check.RatioA), ("ratio B", check.RatioB),
            ("relative", check.RelativeInterval) })
        {
            Assert.Equal(rows[name].Low, interval!.Value.Low, 0.0005);
            Assert.Equal(rows[name].High, interval.Value.High, 0.0005);
        }

        Assert.Equal(26.4 / 32, check.A.Ratio, 12);
        Assert.Equal(23.2 / 26.4, check.Relative, 12);
    }

    [Fact]
    public void Halves_that_are_off_alike_call_for_a_house_factor_only()
    {
        var check = Check(22.0, 22.3);
        Assert.True(check.EquallyFar);
        Assert.Contains("multiplied by 0.69", Assert.Single(check.NextTime), StringComparison.Ordinal);
        Assert.Contains("Nothing shows that the halves were unequally far off", check.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Halves_that_are_off_unequally_call_for_another_assay_and_another_dose()
    {
        var check = Check(27.0, 20.0);
        Assert.False(check.EquallyFar);
        Assert.Equal(1.35, check.ChargeFactorForB, 9);
        Assert.Contains(check.NextTime, text => text.Contains("B's hops would be multiplied by 1.35", StringComparison.Ordinal));
    }

    [Fact]
    public void Estimates_that_fit_are_left_alone() =>
        Assert.StartsWith("The estimates are not shown to be off", Check(31, 31.5).NextTime[0], StringComparison.Ordinal);

    [Fact]
    public void Without_a_precision_the_ratio_stands_without_an_interval_and_says_so()
    {
        var check = Check(26.4, 23.2, precision: new LabPrecision(null));
        Assert.Equal((null, null), (check.RatioA, check.EquallyFar));
        Assert.Contains("no precision is stated", check.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Shared_errors_of_the_estimates_cancel_between_the_halves() =>
        Assert.True(Check(26.4, 23.2, 0.95).RelativeInterval!.Value.Width < Check(26.4, 23.2, 0).RelativeInterval!.Value.Width / 2);

    [Fact]
    public void A_taste_difference_is_only_expected_where_a_range_is_stated_with_its_source()
    {
        var comparison = LabComparison.Compare(Precision.Limit95(1, PrecisionCondition.Repeatability), [26.4, 26.4], [23.2, 23.2]);
        Assert.StartsWith("No just-noticeable difference with a source is stated", JustNoticeable.Expect(comparison, null),
            StringComparison.Ordinal);
        Assert.Contains("is smaller than", JustNoticeable.Expect(comparison, new(5, 7, "a range made up for this test")),
            StringComparison.Ordinal);
        Assert.Contains("cannot be placed", JustNoticeable.Expect(comparison, new(3, 4, "a range made up for this test")),
            StringComparison.Ordinal);
        Assert.Contains("is larger than", JustNoticeable.Expect(comparison, new(1, 2, "a range made up for this test")),
            StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new JustNoticeable(3, 5, " "));
    }

    [Fact]
    public void Replicates_alone_allow_what_Students_t_allows()
    {
        var comparison = LabComparison.Compare(new LabPrecision(null), new Replicates("A", [26.5, 26.3]),
            new Replicates("B", [23.0, 23.4]));
        Assert.Equal(Rows("estimate-check.csv").Where(row => row[0] == "t half-width").Select(row => Number(row[1])).Single(),
            comparison.LimitFromReplicates!.Value, 6);
    }
}
