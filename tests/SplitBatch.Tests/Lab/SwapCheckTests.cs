using SplitBatch.BrewDay;

namespace SplitBatch.Lab;

public class SwapCheckTests
{
    private static readonly Dictionary<string, Side> Key = new() { ["K7"] = Side.A, ["M2"] = Side.B };

    // Invented: half B fermented further, so it holds more alcohol; its pH is lower.
    private static readonly BatchLog Log = new(
    [
        BatchEntry.Measured("1", null, "original gravity", 1.052, "SG", 0.0005),
        BatchEntry.Measured("2", Side.A, "final gravity", 1.016, "SG", 0.0005),
        BatchEntry.Measured("3", Side.B, "final gravity", 1.010, "SG", 0.0005),
        BatchEntry.Measured("4", Side.A, "pH", 4.55, "pH", 0.03),
        BatchEntry.Measured("5", Side.B, "pH", 4.35, "pH", 0.03),
    ]);

    private static readonly Dictionary<Analyte, MethodPrecision> Precisions = new()
    {
        [Analyte.Alcohol] = MethodPrecision.Of(Precision.StandardDeviation(0.03, PrecisionCondition.Repeatability)),
        [Analyte.Ph] = MethodPrecision.Of(Precision.StandardDeviation(0.02, PrecisionCondition.Repeatability)),
    };

    private static SwapCheck Check(BatchLog log, params (string Sample, Analyte Analyte, double Value)[] results) => SwapCheck.Of(
        new LabReturn(results.Select((result, i) => new LabResult($"{i}", result.Sample, result.Analyte, result.Value)), Key, Precisions),
        log.Parity());

    [Fact]
    public void A_return_that_fits_the_log_only_with_the_labels_swapped_is_noticed()
    {
        var check = Check(Log, ("K7", Analyte.Alcohol, 5.55), ("M2", Analyte.Alcohol, 4.75), ("K7", Analyte.Ph, 4.36),
            ("M2", Analyte.Ph, 4.54));
        Assert.True(check.IsSuspicious);
        Assert.Equal([SwapSign.FitsSwapped, SwapSign.FitsSwapped], check.Lines.Select(line => line.Sign));
        Assert.StartsWith("The samples may have been swapped: alcohol and pH fit only if they were.", check.ToString(),
            StringComparison.Ordinal);
        Assert.Contains("this fits only if the labels were swapped", check.Lines[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_return_that_fits_the_log_is_not_suspected()
    {
        var check = Check(Log, ("K7", Analyte.Alcohol, 4.75), ("M2", Analyte.Alcohol, 5.55));
        Assert.False(check.IsSuspicious);
        Assert.Equal("Nothing points to a swap of samples: alcohol fits the labels.", check.ToString());
    }

    [Fact]
    public void Analytes_that_contradict_each_other_point_to_one_mixed_up_analysis() =>
        Assert.StartsWith("The analytes contradict each other: alcohol fits only if the samples were swapped, pH fits only if they "
            + "were not.", Check(
            Log, ("K7", Analyte.Alcohol, 5.55), ("M2", Analyte.Alcohol, 4.75), ("K7", Analyte.Ph, 4.55), ("M2", Analyte.Ph, 4.35))
            .ToString(), StringComparison.Ordinal);

    [Fact]
    public void A_bias_of_the_laboratory_does_not_look_like_a_swap() =>
        Assert.False(Check(Log, ("K7", Analyte.Alcohol, 5.05), ("M2", Analyte.Alcohol, 5.85)).IsSuspicious);

    [Fact]
    public void Halves_too_alike_or_nothing_to_go_by_tell_nothing()
    {
        var alike = new BatchLog([BatchEntry.Measured("1", Side.A, "pH", 4.41, "pH", 0.05),
            BatchEntry.Measured("2", Side.B, "pH", 4.40, "pH", 0.05)]);
        Assert.StartsWith("Whether samples were swapped cannot be told",
            Check(alike, ("K7", Analyte.Ph, 4.40), ("M2", Analyte.Ph, 4.42)).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("Whether samples were swapped cannot be checked",
            Check(alike, ("K7", Analyte.Bitterness, 25), ("M2", Analyte.Bitterness, 22)).ToString(), StringComparison.Ordinal);
    }
}
