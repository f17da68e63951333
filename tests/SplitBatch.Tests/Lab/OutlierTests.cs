using static SplitBatch.Lab.LabReference;

namespace SplitBatch.Lab;

public class OutlierTests
{
    private static Replicates Sample(params double[] values) => new("K7", values);

    [Fact]
    public void Critical_values_agree_with_R_and_with_simulation_in_R()
    {
        var compared = 0;
        foreach (var row in Rows("outliers.csv"))
        {
            var (p, n, alpha, expected) = (Whole(row[1]), Whole(row[2]), Number(row[3]), Number(row[4]));
            var (value, tolerance) = row[0] switch
            {
                "cochran" => (Cochran.Critical(p, n, alpha), 1e-6),
                "cochran-sim" => (Cochran.Critical(p, n, alpha), 0.002),
                "grubbs" => (Grubbs.Critical(p, alpha), 1e-6),
                "grubbs2" => (alpha == 0.05 ? Grubbs.CriticalPair(p).At5 : Grubbs.CriticalPair(p).At1, 0.001),
                _ => throw new InvalidOperationException(row[0]),
            };
            Assert.True(Math.Abs(value - expected) < tolerance, $"{string.Join(", ", row)}: {value}");
            compared++;
        }

        Assert.Equal(198, compared);
    }

    // Printed by the United Kingdom's National Measurement System, chemical and biological metrology pages (2009), 95 %, three decimals.
    public static TheoryData<int, double, double, double, double> CochranTable => new()
    {
        { 2, 0.998, 0.975, 0.939, 0.906 }, { 3, 0.967, 0.871, 0.798, 0.746 }, { 4, 0.906, 0.768, 0.684, 0.629 }, { 5, 0.841, 0.684,
            0.598, 0.544 },
        { 6, 0.781, 0.616, 0.532, 0.480 }, { 7, 0.727, 0.561, 0.480, 0.431 }, { 8, 0.680, 0.516, 0.438, 0.391 }, { 9, 0.638, 0.477,
            0.403, 0.358 },
        { 10, 0.602, 0.445, 0.373, 0.331 }, { 15, 0.471, 0.335, 0.276, 0.242 }, { 20, 0.389, 0.270, 0.221, 0.192 },
    };

    [Theory]
    [MemberData(nameof(CochranTable))]
    public void Cochran_at_five_percent_agrees_with_the_printed_table(int samples, double two, double three, double four, double five)
    {
        double[] printed = [two, three, four, five];
        for (var n = 2; n <= 5; n++)
        {
            // Older tables were computed by hand; the last printed figure may differ by one.
            Assert.Equal(printed[n - 2], Cochran.Critical(samples, n, 0.05), 0.00151);
        }
    }

    // Printed in the tables of a biostatistics text (van Belle and others, University of Washington), 1 %; columns are degrees of freedom
    // 1 and 2.
    [Theory]
    [InlineData(2, 0.9999, 0.9950)]
    [InlineData(3, 0.9933, 0.9423)]
    [InlineData(4, 0.9676, 0.8643)]
    [InlineData(5, 0.9279, 0.7885)]
    [InlineData(6, 0.8828, 0.7218)]
    [InlineData(8, 0.7945, 0.6152)]
    [InlineData(10, 0.7175, 0.5358)]
    [InlineData(20, 0.4799, 0.3297)]
    public void Cochran_at_one_percent_agrees_with_the_printed_table(int samples, double two, double three)
    {
        Assert.Equal(two, Cochran.Critical(samples, 2, 0.01), 0.0002);
        Assert.Equal(three, Cochran.Critical(samples, 3, 0.01), 0.0002);
    }

    // Printed in an open chemistry textbook's appendix (critical values for Grubbs' test); its cells for n = 7 at 5 % and n = 15 at 1 %
    // are misprints and left out.
    [Theory]
    [InlineData(3, 1.155, 1.155)]
    [InlineData(4, 1.481, 1.496)]
    [InlineData(5, 1.715, 1.764)]
    [InlineData(6, 1.887, 1.973)]
    [InlineData(8, 2.126, 2.274)]
    [InlineData(9, 2.215, 2.387)]
    [InlineData(10, 2.290, 2.482)]
    [InlineData(11, 2.355, 2.564)]
    [InlineData(12, 2.412, 2.636)]
    [InlineData(13, 2.462, 2.699)]
    [InlineData(14, 2.507, 2.755)]
    public void Grubbs_agrees_with_the_printed_table(int count, double at5, double at1)
    {
        // The last printed figure differs by one in two cells (n = 3 and n = 8 at 5 %), where R agrees with the formula.
        Assert.Equal(at5, Grubbs.Critical(count, 0.05), 0.00101);
        Assert.Equal(at1, Grubbs.Critical(count, 0.01), 0.00051);
    }

    [Fact]
    public void One_value_far_off_is_flagged_and_stays_in_the_mean()
    {
        var sample = Sample(25.1, 24.9, 25.0, 25.2, 31.0);
        var finding = Grubbs.Test(sample)!;
        Assert.Equal((OutlierStatus.Outlier, 31.0), (finding.Status, Assert.Single(finding.Values)));
        Assert.Contains("It is kept", finding.ToString(), StringComparison.Ordinal);
        Assert.Equal(131.2 / 5, sample.Mean, 9);
        var lab =
            new LabReturn(sample.Values.Select((value, i) => new LabResult($"{i}", "K7", Analyte.Bitterness, value, replicate: i + 1)));
        Assert.True(Assert.Single(lab.Outliers(Analyte.Bitterness)).IsFlagged);
        Assert.Equal(131.2 / 5, lab.Samples(Analyte.Bitterness)[0].Mean, 9);
    }

    [Fact]
    public void A_pair_that_hides_one_another_is_found_together()
    {
        var finding = Grubbs.Test(Sample(25.0, 25.1, 24.9, 25.05, 24.95, 30.0, 30.1))!;
        Assert.Equal(("Grubbs, two values", OutlierStatus.Outlier), (finding.Test, finding.Status));
        Assert.Equal([30.0, 30.1], finding.Values);
    }

    [Fact]
    public void Ordinary_scatter_is_not_flagged() => Assert.False(Grubbs.Test(Sample(25.1, 24.9, 25.0, 25.3))!.IsFlagged);

    [Fact]
    public void Two_values_alone_never_name_the_wrong_one() => Assert.Null(Grubbs.Test(Sample(25, 31)));

    [Fact]
    public void A_sample_that_scatters_more_than_the_others_is_named_by_Cochran()
    {
        Replicates[] samples = [new("K7", [25.0, 25.1]), new("M2", [21.7, 21.8]), new("P5", [23.0, 23.1]), new("R1", [20.0, 23.0])];
        var finding = Cochran.Test(samples)!;
        Assert.Equal(("R1", OutlierStatus.Outlier), (finding.Label, finding.Status));
        Assert.Equal(4.5 / 4.515, finding.Statistic, 9);
    }

    [Fact]
    public void Replicates_farther_apart_than_the_stated_repeatability_allows_are_named()
    {
        var stated = Precision.StandardDeviation(0.5, PrecisionCondition.Repeatability);
        Assert.True(RangeCheck.Of(Sample(25, 26.3), stated)!.IsAcceptable);
        var poor = RangeCheck.Of(Sample(25, 26.5), stated)!;
        Assert.False(poor.IsAcceptable);
        Assert.Equal("K7: 2 replicates span 1.5 BU; the stated repeatability allows 1.4 BU. The run did not repeat as well as the "
            + "laboratory states; ask for further replicates.", poor.ToString());
    }

    // MEBAK 2002, volume II, p. 114, as quoted in an instrument maker's manual: r = -0.36 + 0.05 m, R = 0.72 + 0.14 m.
    [Fact]
    public void The_published_limits_of_the_bitterness_method_grow_with_the_level()
    {
        Assert.Equal(0.89, PublishedPrecision.BitternessMebak2002.Repeatability!.LimitAt(25), 9);
        Assert.Equal(4.22, PublishedPrecision.BitternessMebak2002.Reproducibility!.LimitAt(25), 9);
        Assert.Throws<ArgumentOutOfRangeException>(() => PublishedPrecision.BitternessMebak2002.Repeatability.LimitAt(7));
    }
}
