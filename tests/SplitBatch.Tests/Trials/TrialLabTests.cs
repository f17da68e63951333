using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>
/// The lab return and the batch log as a brewer meets them: each through a trial folder on the disk. The practice trials' data are
/// invented, and what is expected of them is worked out here by hand.
/// </summary>
public sealed class TrialLabTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("trial-lab-");

    public void Dispose() => root.Delete(recursive: true);

    private Trial Amber() =>
        Trial.Open(new TrialFolder(Examples.Folder("amber-cone-or-pellet")).CopyTo(Path.Combine(root.FullName, "amber")).Path);

    private Trial Yeasts() => Amber().Practice("two-yeasts").ImportReturn();

    [Fact]
    public void A_corrected_result_counts_in_place_of_the_old_one_and_both_stay_in_the_file()
    {
        var trial = Amber().ImportReturns();
        const string Wrong = "R-0417/S1/bitterness/2";
        trial = trial.CorrectReturn(Wrong, 22.2, "misprint on the report", "brewer");
        Assert.Equal([27.3, 22.2], trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Values);
        var correction = Assert.Single(trial.Lab.History.Corrections);
        Assert.Equal((Wrong, Wrong + "#2", "misprint on the report", "brewer"),
            (correction.Old.Id, correction.New.Id, correction.New.Reason, correction.New.Who));
        Assert.Contains(Wrong + ",2026-04-17,S1,,bitterness,2,26.9,BU", File.ReadAllText(trial.Folder.PathOf("lab-returns.csv")),
            StringComparison.Ordinal);
        Assert.Equal("iso-octane extraction", correction.New.Method);

        // Again is harmless; another value for the replaced row is refused; the row in force can be corrected once more.
        Assert.Single(trial.CorrectReturn(Wrong, 22.2, "misprint on the report").Lab.History.Corrections);
        Assert.Contains("already superseded",
            Assert.Throws<LogException>(() => trial.CorrectReturn(Wrong, 22.3, "another thought")).Message, StringComparison.Ordinal);
        trial = trial.CorrectReturn(Wrong + "#2", 22.4, "the lab's second letter");
        Assert.Equal((Wrong + "#3", 22.4),
            (trial.Lab.History.Corrections[1].New.Id, trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Values[1]));
        Assert.Throws<ArgumentException>(() => trial.CorrectReturn(Wrong + "#3", 22.4, " "));
        Assert.StartsWith("This trial has no lab result \"R-0417/S1/bitternes/2\"",
            Assert.Throws<ArgumentException>(() => trial.CorrectReturn("R-0417/S1/bitternes/2", 22, "x")).Message,
            StringComparison.Ordinal);
        Assert.Equal(6, trial.ImportReturns().Lab.Results.Count);
    }

    [Fact]
    public void What_is_logged_on_brewing_day_reaches_the_parity_check_and_the_verdict()
    {
        var trial = Amber();
        Assert.Contains("fermentation temperature", trial.Parity.NotMeasured.Select(line => line.Quantity));
        BatchEntry[] entries =
        [
            BatchEntry.Measured("21", Side.A, "fermentation temperature", 19.0, "°C", 0.2) with
            {
                Who = "brewer",
                When = new(2026, 3, 20),
            },
            BatchEntry.Measured("22", Side.B, "fermentation temperature", 20.5, "°C", 0.2),
        ];
        trial = trial.LogBrew(entries).LogBrew(entries);
        Assert.Equal("fermentation temperature", Assert.Single(trial.Parity.Confounds).Quantity);
        var limit = Assert.Single(trial.Verdict().Limitations, claim => claim.Id == "limit.confound.fermentation temperature");
        Assert.Equal("The fermentation temperature was 19 ± 0.2 °C in half A and 20.5 ± 0.2 °C in half B, 1.50 °C apart, more than the "
            + "0.28 °C that the instruments' uncertainty explains: a confound.", limit.Sentence);
        Assert.Equal(["batch-log.csv, id 21", "batch-log.csv, id 22"], limit.Sources);
        var unmeasured = Assert.Single(trial.Verdict().Limitations, claim => claim.Id == "limit.unmeasured").Sentence;
        Assert.Contains("colour", unmeasured, StringComparison.Ordinal);
        Assert.DoesNotContain("fermentation temperature", unmeasured, StringComparison.Ordinal);

        trial = trial.LogBrew(BatchEntry.Measured("23", Side.B, "fermentation temperature", 19.1, "°C", 0.2) with
        {
            Supersedes = "22",
            Reason = "the probe hung in the air",
            Who = "brewer",
        });
        Assert.Empty(trial.Parity.Confounds);
        Assert.Equal("22 was replaced by 23: the probe hung in the air. It read: B fermentation temperature 20.5 ± 0.2 °C. It reads: B "
            + "fermentation temperature 19.1 ± 0.2 °C.", Assert.Single(trial.BatchLog.History.Corrections).ToString());
        Assert.Throws<LogException>(() => trial.LogBrew(BatchEntry.Measured("23", Side.B, "pH", 4.4, "pH")));
        Assert.Throws<InvalidOperationException>(() => Trial.Open(Examples.Folder("amber-cone-or-pellet")).LogBrew(entries));
    }

    [Fact]
    public void Each_estimate_stands_beside_the_labs_value_with_an_interval()
    {
        var waiting = Assert.Throws<TrialIncompleteException>(() => Amber().EstimateAgainstLab());
        Assert.Contains("lab result of both halves for bitterness", waiting.Message, StringComparison.Ordinal);
        var trial = Amber().ImportReturns();
        var check = trial.EstimateAgainstLab();
        Assert.Equal(27.1 / trial.Doses!.A.Bitterness.Value, check.A.Ratio, 9);
        Assert.Equal(24.4 / trial.Doses.B.Bitterness.Value, check.B.Ratio, 9);
        Assert.True(check.RatioA!.Value.Contains(check.A.Ratio));
        Assert.True(check.Correlation > 0.5, "Both halves come from one kettle and one formula, so most of the doubt is shared.");
        Assert.Equal(check.RelativeInterval!.Value.Contains(1), check.EquallyFar);
        Assert.NotEmpty(check.NextTime);
    }

    [Fact]
    public void The_taste_is_only_foretold_from_a_range_with_a_source()
    {
        Assert.Equal("The lab's bitterness of both halves is not logged yet.", Amber().ExpectedInTheGlass());
        var trial = Amber().ImportReturns();
        Assert.StartsWith("No just-noticeable difference with a source is stated", trial.ExpectedInTheGlass(), StringComparison.Ordinal);
        var json = trial.Folder.PathOf("trial.json");
        File.WriteAllText(json, File.ReadAllText(json)
            .Replace("\"samples\": {", "\"just noticeable difference\": { \"low [BU]\": 4, \"high [BU]\": 6, \"source\": \"made up for "
                + "this test\" }, \"samples\": {", StringComparison.Ordinal));

        // 2.7 BU give or take 1.19: from 1.5 to 3.9, below 4.
        Assert.Equal(
            "The difference, between 1.5 BU and 3.9 BU as far as the method can tell, is smaller than the stated just-noticeable "
                + "difference of 4.0 BU to 6.0 BU (made up for this test). The panel is the test.",
            Trial.Open(trial.Folder.Path).ExpectedInTheGlass());
    }

    [Fact]
    public void A_return_in_another_language_with_decimal_commas_brings_six_analytes_into_their_own_units()
    {
        var lab = Yeasts().Lab;
        Assert.Equal(Analyte.Known, lab.Analytes);
        Assert.Equal(20, lab.Results.Count);
        Assert.Equal([20.6, 20.1, 30.5, 20.3], lab.Replicates("P-31", Analyte.Bitterness)!.Values);
        Assert.Equal([5.44, 5.46], lab.Replicates("P-31", Analyte.Alcohol)!.Values);
        Assert.Equal(4.47, lab.Replicates("P-32", Analyte.Ph)!.Mean, 9);
        Assert.Equal(1.2, lab.Replicates("P-32", Analyte.Turbidity)!.Mean, 9); // 4.8 NTU
        Assert.Equal((18.3, 8.5), (lab.Replicates("P-31", Analyte.IsoAlphaAcids)!.Mean, lab.Replicates("P-32", Analyte.Colour)!.Mean));

        // Iso-alpha acids: 2.8 x 2.5 % of 18.85. Alcohol: 2.8 x 0.03 / sqrt 2. Turbidity: four ways to read 15 %.
        var byAnalyte = lab.CompareAll().ToDictionary(comparison => comparison.Analyte.Name);
        Assert.Equal(2.8 * 0.025 * 18.85, byAnalyte["iso-alpha acids"].CriticalDifference!.Value, 9);
        Assert.Equal(2.8 * 0.03 / Math.Sqrt(2), byAnalyte["alcohol"].CriticalDifference!.Value, 9);
        Assert.Equal(["repeatability, coefficient of variation 15 %", "reproducibility, coefficient of variation 15 %",
            "repeatability, 95 % limit 15 %",
            "reproducibility, 95 % limit 15 %"], byAnalyte["turbidity"].Readings.Select(reading => reading.Precision.ToString()));
        Assert.Equal(Judgement.Within, byAnalyte["colour"].Judgement);
    }

    [Fact]
    public void A_misprint_is_flagged_kept_and_told_until_it_is_corrected()
    {
        var trial = Yeasts();
        var finding = Assert.Single(trial.Lab.Outliers(Analyte.Bitterness), one => one.Test == "Grubbs, one value" && one.IsFlagged);
        Assert.Equal(("P-31", 30.5, OutlierStatus.Outlier), (finding.Label, Assert.Single(finding.Values), finding.Status));
        Assert.Equal(OutlierStatus.Outlier, Assert.Single(trial.Lab.Outliers(Analyte.Bitterness), one => one.IsAboutSpread).Status);
        Assert.Equal(91.5 / 4, trial.Lab.Replicates("P-31", Analyte.Bitterness)!.Mean, 9);
        var claims = trial.Verdict().Claims.Where(claim => claim.Id.StartsWith("lab.outlier.", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, claims.Count);
        Assert.StartsWith("In sample P-31, 30.5 BU of bitterness is an outlier (Grubbs, one value: 1.499; critical 1.481 at 5 % and 1.496 "
            + "at 1 %).", claims[0].Sentence, StringComparison.Ordinal);
        Assert.Contains(trial.Verdict().Claims,
            claim => claim.Id == "lab.range.1"
                && claim.Sentence
                    .StartsWith("In sample P-31, 4 replicates of bitterness span 10.4 BU, more than the 1.5 BU that the stated "
                        + "repeatability allows", StringComparison.Ordinal));

        trial = trial.CorrectReturn("204/P-31/bitterness/3", 20.5, "misprint, confirmed by the lab");
        Assert.DoesNotContain(trial.Lab.Outliers(Analyte.Bitterness), one => one.IsFlagged);
        Assert.DoesNotContain(trial.Verdict().Claims,
            claim => claim.Id.StartsWith("lab.outlier.", StringComparison.Ordinal)
                || claim.Id.StartsWith("lab.range.", StringComparison.Ordinal));
    }

    [Fact]
    public void Swapped_samples_are_noticed_told_in_the_verdict_and_put_right_without_losing_a_row()
    {
        var trial = Yeasts();
        var check = trial.CheckSamples();
        Assert.True(check.IsSuspicious);
        Assert.StartsWith("The samples may have been swapped: alcohol and pH fit only if they were.", check.ToString(),
            StringComparison.Ordinal);
        Assert.Contains(trial.Verdict().Limitations, claim => claim.Id == "limit.samples");
        Assert.Equal(SwapSign.CannotTell, check.Lines.Single(line => line.Analyte.Equals(Analyte.Colour)).Sign);

        const string Reason = "the lab found the two bottles under each other's numbers";
        trial = trial.ExchangeSamples("P-31", "P-32", Reason, "brewer");
        Assert.False(trial.CheckSamples().IsSuspicious);
        Assert.Equal("Nothing points to a swap of samples: alcohol and pH fit the labels.", trial.CheckSamples().ToString());
        Assert.DoesNotContain(trial.Verdict().Limitations, claim => claim.Id == "limit.samples");
        Assert.Equal((40, 20, 20), (trial.Lab.History.Rows.Count, trial.Lab.Results.Count, trial.Lab.History.Corrections.Count));
        Assert.Equal([5.44, 5.46], trial.Lab.Replicates(Side.B, Analyte.Alcohol)!.Values);
        Assert.All(trial.Lab.History.Corrections, correction =>
        {
            Assert.Equal((correction.Old.Value, Reason, "brewer"), (correction.New.Value, correction.New.Reason, correction.New.Who));
            Assert.NotEqual(correction.Old.Sample, correction.New.Sample);
        });
        var file = File.ReadAllText(trial.Folder.PathOf("lab-returns.csv"));
        trial = trial.ExchangeSamples("P-31", "P-32", Reason);
        Assert.Equal(file, File.ReadAllText(trial.Folder.PathOf("lab-returns.csv")));
        Assert.Throws<ArgumentException>(() => trial.ExchangeSamples("P-31", "P-33", Reason));
        Assert.Throws<ArgumentException>(() => trial.ExchangeSamples("P-31", "P-31", Reason));
    }

    [Fact]
    public void An_exchange_that_was_cut_short_is_finished_by_doing_it_again()
    {
        var trial = Yeasts();
        const string Reason = "bottles swapped at packing";
        var lines = File.ReadAllLines(trial.ExchangeSamples("P-31", "P-32", Reason).Folder.PathOf("lab-returns.csv"));
        File.WriteAllLines(trial.Folder.PathOf("lab-returns.csv"), lines[..27]); // header, 20 results, 6 of 20 corrections
        trial = Trial.Open(trial.Folder.Path);
        Assert.Equal(6, trial.Lab.History.Corrections.Count);
        trial = trial.ExchangeSamples("P-31", "P-32", Reason);
        Assert.Equal(20, trial.Lab.History.Corrections.Count);
        Assert.False(trial.CheckSamples().IsSuspicious);
    }

    [Fact]
    public void One_mixed_up_analysis_is_exchanged_alone()
    {
        var trial = Yeasts().ExchangeSamples("P-31", "P-32", "the lab's letter", analyte: Analyte.Ph);
        Assert.StartsWith("The analytes contradict each other: alcohol fits only if the samples were swapped, pH fits only if they "
            + "were not.", trial.CheckSamples().ToString(), StringComparison.Ordinal);
        Assert.Equal(2, trial.Lab.History.Corrections.Count);
    }

    [Fact]
    public void Absorbances_from_a_file_become_bitterness_by_the_published_relation_and_the_readings_stay()
    {
        var trial = Amber().Practice("own-readings").ImportReturns();

        // 50 x (0.446 - 0.006), 50 x (0.441 - 0.006), 50 x (0.421 - 0.006), 50 x 2 x (0.214 - 0.014).
        Assert.Equal([22.0, 21.75], trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Values);
        Assert.Equal([20.75, 20.0], trial.Lab.Replicates(Side.B, Analyte.Bitterness)!.Values);
        var reading = trial.Lab.Results[3].Reading!;
        Assert.Equal((0.214, 0.014, 2.0), (reading.Absorbance, reading.Blank, reading.Dilution));
        Assert.Contains("own-1/P-32/bitterness/2,2026-05-07,P-32,,bitterness,2,,,",
            File.ReadAllText(trial.Folder.PathOf("lab-returns.csv")), StringComparison.Ordinal);

        // The dirty blank of one reading is warned of, in the folder's check and in the verdict.
        Assert.Contains(trial.Warnings,
            fault => fault.Column == "absorbance" && fault.Row == 5
                && fault.Problem.StartsWith("The blank absorbs 0.014", StringComparison.Ordinal));
        Assert.Contains(trial.Verdict().Limitations, claim => claim.Id == "limit.own-reading");
        Assert.Contains(trial.Verdict().Limitations,
            claim => claim.Sentence.StartsWith("The blank absorbs 0.014", StringComparison.Ordinal));
        Assert.Equal(4, trial.ImportReturns().Lab.Results.Count);
    }

    [Fact]
    public void Absorbances_typed_in_a_cell_are_logged_like_those_of_a_file()
    {
        var trial = Amber().LogAbsorbance("own-2", "S1", new AbsorbanceReading(0.482, blank: 0.006),
            new AbsorbanceReading(0.243, 0.005, dilution: 2));
        Assert.Equal([23.8, 23.8], trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Values, (x, y) => Math.Abs(x - y) < 1e-9);
        Assert.Equal(2, trial.LogAbsorbance("own-2", "S1", new AbsorbanceReading(0.482, blank: 0.006)).Lab.Results.Count);
        Assert.Throws<LogException>(() => trial.LogAbsorbance("own-2", "S1", new AbsorbanceReading(0.5)));
        Assert.Contains("0.5",
            Assert.Throws<LogException>(
                () => trial.LogAbsorbance("own-3", "S1", new AbsorbanceReading(0.25, path: UnitsNet.Length.FromMillimeters(5)))).Message,
                StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1,S1,bitterness,25,0.5,,", "value")]
    [InlineData("1,S1,pH,,0.5,,", "analyte")]
    [InlineData("1,S1,bitterness,,0.1,0.5,", "absorbance")]
    [InlineData("1,S1,bitterness,,0.5,,0.5", "absorbance")]
    [InlineData("1,S1,bitterness,,\"0,5\",,", "absorbance")]
    [InlineData("1,S1,bitterness,,0.5,x,", "blank")]
    public void An_absorbance_that_cannot_be_used_is_named(string row, string column)
    {
        var trial = Amber();
        File.WriteAllText(trial.Folder.PathOf("lab-returns.csv"),
            $"id,sample,analyte,value,absorbance,blank,dilution,supersedes,reason\n{row},,\n");
        var fault = Assert.Single(Assert.Throws<TrialFolderException>(() => Trial.Open(trial.Folder.Path)).Faults,
            fault => fault.Severity == Severity.Error);
        Assert.Equal(("lab-returns.csv", 2, column), (fault.File, fault.Row, fault.Column));
    }

    [Fact]
    public void Results_of_a_lab_and_of_ones_own_instrument_are_not_averaged_into_one()
    {
        var trial = Amber().ImportReturns().LogAbsorbance("own", "S1", new AbsorbanceReading(0.60));
        Assert.Equal([27.3, 26.9], trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Values);
        Assert.Contains(trial.Verdict().Limitations,
            claim => claim.Sentence == "More than one measured bitterness: Valley lab (invented), own instrument. The halves are compared "
                + "by the results of Valley lab (invented) alone.");
    }

    [Fact]
    public void A_file_that_cannot_be_read_for_certain_logs_nothing()
    {
        var trial = Amber().Practice("two-yeasts");
        var file = trial.Folder.PathOf("incoming/befund-204.csv");
        File.WriteAllText(file, File.ReadAllText(file).Replace("5,44", "5.44", StringComparison.Ordinal));
        var error = Assert.Throws<TrialFolderException>(() => trial.ImportReturns());
        Assert.Contains("Decimals are written in two ways", error.Faults[0].Problem, StringComparison.Ordinal);
        Assert.False(trial.Folder.Holds("lab-returns.csv"));
    }

    [Fact]
    public void A_practice_trial_starts_afresh_and_comes_only_with_an_example()
    {
        var amber = Amber();
        Assert.Equal(20, amber.Practice("two-yeasts").ImportReturn().Lab.Results.Count);
        Assert.Empty(amber.Practice("two-yeasts").Lab.Results);
        Assert.Throws<TrialIncompleteException>(() => amber.Practice("three-yeasts"));
        Assert.Throws<InvalidOperationException>(() => Trial.Open(Examples.Folder("amber-cone-or-pellet")).Practice("two-yeasts"));
    }
}
