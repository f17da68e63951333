using SplitBatch.Numbers;

namespace SplitBatch.Lab;

public class LabComparisonTests
{
    private static readonly double[] A = [26.4];
    private static readonly double[] B = [22.9];

    [Fact]
    public void A_difference_is_given_in_units_and_in_percent_of_the_mean_beside_the_critical_difference()
    {
        var comparison = LabComparison.Compare(Precision.StandardDeviation(0.6, PrecisionCondition.Repeatability), [26.5, 26.3],
            [22.8, 23.0]);
        Assert.Equal(3.5, comparison.Difference, 9);
        Assert.Equal(14.199, comparison.PercentOfMean!.Value, 3);
        Assert.Equal(2.8 * 0.6 / Math.Sqrt(2), comparison.CriticalDifference!.Value, 9);
        Assert.Equal(Judgement.Exceeds, comparison.Judgement);
        Assert.Equal(
            "A 26.4 BU (mean of 2) and B 22.9 BU (mean of 2) differ by 3.5 BU, 14 % of their mean. With repeatability, standard "
                + "deviation 0.6, "
            + "two such results on the same beer lie within 1.2 BU of each other in 95 cases out of 100: the difference is larger, so the "
            + "beers differ in bitterness as this method measures it.",
            comparison.ToString());
    }

    [Fact]
    public void A_difference_within_the_limit_is_never_called_the_same()
    {
        var comparison = LabComparison.Compare(Precision.Limit95(4, PrecisionCondition.Repeatability), A, B);
        Assert.Equal(Judgement.Within, comparison.Judgement);
        Assert.Contains("not proof that they are the same", comparison.ToString(), StringComparison.Ordinal);
        Assert.Equal(new Interval(-0.5, 7.5), comparison.Interval);
    }

    // A figure made up for this test.
    [Fact]
    public void A_range_of_unknown_kind_is_read_every_way_and_the_conclusion_depends_on_it()
    {
        var comparison = LabComparison.Compare(StatedPrecision.Percent(4, 8), A, B);
        var byReading = comparison.Readings.ToDictionary(
            reading => reading.Precision.ToString(),
            reading => (Math.Round(reading.CriticalDifference!.Value, 3), reading.IsUpperBound, reading.Judgement));
        Assert.Equal(8, byReading.Count);
        Assert.Equal((2.761, false, Judgement.Exceeds), byReading["repeatability, coefficient of variation 4 %"]);
        Assert.Equal((5.522, false, Judgement.Within), byReading["repeatability, coefficient of variation 8 %"]);
        Assert.Equal((1.972, false, Judgement.Exceeds), byReading["repeatability, 95 % limit 8 %"]);
        Assert.Equal((5.522, true, Judgement.NotJudged), byReading["reproducibility, coefficient of variation 8 %"]);
        Assert.Equal(Judgement.DependsOnReading, comparison.Judgement);
        Assert.Null(comparison.CriticalDifference);
        Assert.Contains("larger than the method's own scatter under 6 of them", comparison.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Telling_the_kind_leaves_fewer_readings()
    {
        var stated = StatedPrecision.Percent(4, 8) with { Kind = PrecisionKind.Limit95, Condition = PrecisionCondition.Repeatability };
        Assert.Equal(2, stated.Readings().Count);
        Assert.Equal(Judgement.Exceeds, LabComparison.Compare(stated, A, B).Judgement);
    }

    [Fact]
    public void Five_percent_means_very_different_limits()
    {
        Assert.Equal(5 / 2.8, Precision.Limit95Percent(5, PrecisionCondition.Repeatability).StandardDeviationAt(100), 9);
        Assert.Equal(14.0, Precision.CoefficientOfVariation(5, PrecisionCondition.Repeatability).LimitAt(100), 9);
    }

    [Fact]
    public void A_figure_that_grows_with_the_level_is_taken_at_the_mean_of_both_beers()
    {
        var growing = Precision.GrowingWithLevel(PrecisionKind.StandardDeviation, PrecisionCondition.Repeatability, 0.2, 0.01);
        Assert.Equal(2.8 * (0.2 + 0.01 * 24.65), LabComparison.Compare(growing, A, B).CriticalDifference!.Value, 9);
        var power = Precision.GrowingWithLevel(PrecisionKind.StandardDeviation, PrecisionCondition.Repeatability, 0, 0.1, 0.5);
        Assert.Equal(0.5, power.StandardDeviationAt(25), 9);
    }

    [Fact]
    public void Results_of_two_laboratories_need_reproducibility()
    {
        var a = new Replicates("A", [26.4, 26.6], lab: "one");
        var b = new Replicates("B", [22.9, 22.9], lab: "two");
        var r = Precision.Limit95(1, PrecisionCondition.Repeatability);
        var big = Precision.Limit95(4, PrecisionCondition.Reproducibility);
        Assert.Equal(Judgement.NotJudged, LabComparison.Compare(r, a, b).Judgement);
        Assert.Equal(4, LabComparison.Compare(big, a, b).CriticalDifference!.Value, 9);
        Assert.Equal(Math.Sqrt(15.5), LabComparison.Compare(new LabPrecision(r, big), a, b).CriticalDifference!.Value, 9);
        Assert.Equal(Math.Sqrt(0.5),
            LabComparison.Compare(new LabPrecision(r, big), a, new Replicates("B", [22.9, 22.9], lab: "ONE")).CriticalDifference!.Value,
            9);
    }

    [Fact]
    public void Different_analytes_are_not_compared() =>
        Assert.Throws<ArgumentException>(() => LabComparison.Compare(
            Precision.Limit95(1, PrecisionCondition.Repeatability), new Replicates("A", [4.2], Analyte.Ph), new Replicates("B", A)));

    [Fact]
    public void A_percentage_that_looks_like_a_share_is_refused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(
            () => Precision.CoefficientOfVariation(0.043, PrecisionCondition.Repeatability));
        Assert.Contains("write 4.3 for 4.3 %", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Swapping_the_beers_changes_the_sign_and_nothing_else()
    {
        var precision = Precision.CoefficientOfVariation(4, PrecisionCondition.Repeatability);
        var (ab, ba) = (LabComparison.Compare(precision, A, B), LabComparison.Compare(precision, B, A));
        Assert.Equal(ab.Difference, -ba.Difference);
        Assert.Equal((ab.CriticalDifference, ab.PercentOfMean, ab.Judgement), (ba.CriticalDifference, ba.PercentOfMean, ba.Judgement));
    }
}
