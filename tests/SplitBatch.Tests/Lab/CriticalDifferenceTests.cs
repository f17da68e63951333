using static SplitBatch.Lab.LabReference;

namespace SplitBatch.Lab;

public class CriticalDifferenceTests
{
    [Fact]
    public void Every_critical_difference_agrees_with_variance_components_computed_in_R()
    {
        var compared = 0;
        foreach (var row in Rows("critical-difference.csv"))
        {
            var (r, big, n1, n2, expected) = (Number(row[1]), Number(row[2]), Whole(row[3]), Whole(row[4]), Number(row[5]));
            var (value, tolerance) = row[0] switch
            {
                "one" => (CriticalDifference.OneLaboratory(r, n1, n2), 1e-9),
                "two" => (CriticalDifference.TwoLaboratories(r, big, n1, n2), 1e-9),
                "reference" => (CriticalDifference.AgainstReference(r, big, n1), 1e-9),
                "range" => (CriticalDifference.RangeFactor(n1), 1e-6),
                _ => throw new InvalidOperationException(row[0]),
            };
            Assert.True(Math.Abs(value - expected) < tolerance, $"{string.Join(", ", row)}: {value}");
            compared++;
        }

        Assert.Equal(92, compared);
    }

    // Published lactose trial figures, r = 0.15 and R = 0.16 g/100 g, two results in each laboratory; computed by hand from the rule.
    [Fact]
    public void Two_laboratories_with_two_results_each_come_to_a_value_worked_by_hand() =>
        Assert.Equal(Math.Sqrt(0.0256 - 0.0225 * 0.5), CriticalDifference.TwoLaboratories(0.15, 0.16, 2, 2), 12);

    // ISO 5725-6 (1994), table 1, as printed to one decimal.
    [Theory]
    [InlineData(2, 2.8)]
    [InlineData(3, 3.3)]
    [InlineData(4, 3.6)]
    [InlineData(5, 3.9)]
    [InlineData(6, 4.0)]
    public void The_range_factor_rounds_to_the_printed_table(int count, double printed) =>
        Assert.Equal(printed, Math.Round(CriticalDifference.RangeFactor(count), 1));

    [Fact]
    public void Repeatability_above_reproducibility_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CriticalDifference.TwoLaboratories(2, 1, 2, 2));

    [Fact]
    public void A_mean_of_no_results_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CriticalDifference.OneLaboratory(1, 0, 2));
}
