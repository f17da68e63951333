using SplitBatch.BrewDay;

namespace SplitBatch.Lab;

public class LabReturnTests
{
    private static readonly LabResult[] Results =
    [
        new("1", "K7", Analyte.Bitterness, 25.1), new("2", "K7", Analyte.Bitterness, 24.9, replicate: 2),
        new("3", "M2", Analyte.Bitterness, 21.4), new("4", "M2", Analyte.Bitterness, 29.6, replicate: 2),
        new("5", "M2", Analyte.Bitterness, 21.6, replicate: 2) { Supersedes = "4", Reason = "typing error" },
    ];

    private static readonly Dictionary<string, Side> Key = new() { ["K7"] = Side.A, ["M2"] = Side.B };

    [Fact]
    public void Samples_stay_blind_until_the_key_is_laid_beside_them()
    {
        var blind = new LabReturn(Results);
        Assert.Equal(["K7", "M2"], blind.BlindSamples);
        Assert.Null(blind.Compare(Analyte.Bitterness));
        Assert.Equal(25.0, blind.Replicates("K7", Analyte.Bitterness)!.Mean, 9);
        Assert.Equal(3.5, blind.Unblind(Key).Compare(Analyte.Bitterness)!.Difference, 9);
    }

    [Fact]
    public void A_sample_that_only_another_laboratory_measured_has_no_replicates_to_be_looked_at()
    {
        LabResult Of(string id, string sample, double value, string lab) =>
            new(id, sample, Analyte.Bitterness, value) { Laboratory = lab };
        var lab = new LabReturn([Of("1", "K7", 25, "Valley"), Of("2", "M2", 22, "Valley"), Of("3", "S3", 30, "Hill")], Key);
        Assert.Equal(["K7", "M2"], lab.Samples(Analyte.Bitterness).Select(sample => sample.Label));
        Assert.Empty(lab.Outliers(Analyte.Bitterness));
    }

    [Fact]
    public void Without_a_precision_the_difference_is_shown_and_not_judged()
    {
        var comparison = new LabReturn(Results, Key).Compare(Analyte.Bitterness)!;
        Assert.Equal(Judgement.NotJudged, comparison.Judgement);
        Assert.EndsWith("No precision is stated.", comparison.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_corrected_result_counts_in_place_of_the_old_one_and_both_stay()
    {
        var lab = new LabReturn(Results, Key);
        Assert.Equal(5, lab.History.Rows.Count);
        Assert.Equal([21.4, 21.6], lab.Replicates(Side.B, Analyte.Bitterness)!.Values);
        Assert.Equal(
            "4 was replaced by 5: typing error. It read: sample M2, bitterness, replicate 2: 29.6 BU. It reads: sample M2, bitterness, "
                + "replicate 2: 21.6 BU.",
            Assert.Single(lab.History.Corrections).ToString());
    }

    [Fact]
    public void A_row_and_the_key_may_not_contradict_each_other() =>
        Assert.Throws<ArgumentException>(() => new LabReturn([new("1", "K7", Analyte.Bitterness, 25) { Beer = Side.B }], Key));

    [Fact]
    public void Faulty_corrections_are_all_named()
    {
        LabResult Row(string id, string? old, string? reason) =>
            new(id, "K7", Analyte.Bitterness, 25) { Supersedes = old, Reason = reason };
        var history = new LogHistory<LabResult>(
            [Row("1", null, null), Row("1", null, null), Row("2", "1", null), Row("3", "1", "again"), Row("4", "9", "lost"),
                Row("5", null, "why"), Row("6", "6", "self")]);
        Assert.Equal(["1", "2", "3", "4", "5", "6"], history.Problems.Select(problem => problem.Row.Id));
    }

    [Fact]
    public void Colour_in_SRM_is_kept_in_EBC_and_a_foreign_unit_is_refused()
    {
        Assert.Equal(19.7, new LabResult("1", "K7", Analyte.Colour, 10, "SRM").Value, 9);
        Assert.Throws<ArgumentException>(() => new LabResult("1", "K7", Analyte.Bitterness, 25, "g/L"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LabResult("1", "K7", Analyte.Ph, 42));
    }
}
