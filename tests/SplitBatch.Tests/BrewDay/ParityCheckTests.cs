namespace SplitBatch.BrewDay;

public class ParityCheckTests
{
    private static BatchEntry Number(Side? beer, string quantity, double value, string unit, double? uncertainty = null) =>
        BatchEntry.Measured($"{quantity} {beer}", beer, quantity, value, unit, uncertainty);

    private static BatchEntry Word(Side? beer, string quantity, string text) =>
        BatchEntry.Noted($"{quantity} {beer}", beer, quantity, text);

    private static ParityLine Line(string quantity, params BatchEntry[] entries) =>
        new BatchLog(entries).Parity(expected: []).Lines.Single(line => line.Quantity == quantity);

    [Fact]
    public void Equal_values_are_the_same()
    {
        var line = Line("pH", Number(Side.A, "pH", 4.4, "pH", 0.05), Number(Side.B, "pH", 4.4, "pH", 0.05));
        Assert.Equal((Parity.Same, "The pH was the same in both halves: 4.4 ± 0.05."), (line.Verdict, line.ToString()));
    }

    [Theory]
    [InlineData(1.053, Parity.WithinInstrument)]
    [InlineData(1.054, Parity.Confound)]
    public void A_difference_is_judged_against_what_both_instruments_can_tell(double b, Parity expected)
    {
        var line = Line("original gravity", Number(Side.A, "original gravity", 1.052, "SG", 0.001),
            Number(Side.B, "original gravity", b, "SG", 0.001));
        Assert.Equal(expected, line.Verdict);
        Assert.Equal(0.001 * Math.Sqrt(2), line.Tolerance!.Value, 12);
    }

    [Fact]
    public void A_difference_without_a_stated_uncertainty_is_a_confound_until_shown_otherwise()
    {
        var line = Line("pH", Number(Side.A, "pH", 4.4, "pH", 0.05), Number(Side.B, "pH", 4.41, "pH"));
        Assert.Equal(Parity.Confound, line.Verdict);
        Assert.Contains("the uncertainty of the instrument is not logged", line.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void Halves_logged_in_different_units_are_compared_in_one()
    {
        Assert.Equal(Parity.Same,
            Line("pitching temperature", Number(Side.A, "pitching temperature", 20, "°C", 0.5),
                Number(Side.B, "pitching temperature", 68, "°F", 1)).Verdict);
        var volume = Line("volume into fermenter", Number(Side.A, "volume into fermenter", 20, "L", 0.2),
            Number(Side.B, "volume into fermenter", 5, "gal", 0.05));
        Assert.Equal(20 - 18.92705892, volume.Difference!.Value, 9);
        Assert.Equal(Parity.Confound, volume.Verdict);
        Assert.Equal(Parity.WithinInstrument,
            Line("original gravity", Number(Side.A, "original gravity", 1.048, "SG", 0.001),
                Number(Side.B, "original gravity", 12, "°P", 0.2)).Verdict);
    }

    [Fact]
    public void Units_that_cannot_be_compared_are_said_to_be_so() =>
        Assert.Equal(Parity.NotMeasured,
            Line("colour", Number(Side.A, "colour", 20, "EBC", 1), Number(Side.B, "colour", 20, "Lovibond", 1)).Verdict);

    [Fact]
    public void A_missing_half_is_not_measured_and_so_is_a_quantity_that_was_expected()
    {
        var check = new BatchLog([Word(Side.A, "yeast lot", "Y-12")]).Parity(expected: ["packaging date"]);
        Assert.Equal(["yeast lot", "packaging date"], check.NotMeasured.Select(line => line.Quantity));
        Assert.Equal("The yeast lot was not measured on half B, so nobody can say whether it was equal.", check.NotMeasured[0].Remark);
    }

    [Fact]
    public void Words_that_differ_are_a_confound_unless_they_are_the_variable()
    {
        BatchEntry[] entries = [Word(Side.A, "yeast lot", "Y-12"), Word(Side.B, "yeast lot", "Y-13"), Word(Side.A, "hop form", "cones"),
            Word(Side.B, "hop form", "pellets")];
        var check = new BatchLog(entries).Parity(variable: ["hop form"], expected: []);
        Assert.Equal("The yeast lot was Y-12 in A and Y-13 in B: a confound.", Assert.Single(check.Confounds).Remark);
        Assert.Equal(Parity.TheVariable, check.Lines[1].Verdict);
    }

    [Fact]
    public void A_value_before_the_split_holds_for_both() =>
        Assert.Equal(Parity.Same, Line("mash temperature", Number(null, "mash temperature", 66, "°C")).Verdict);

    [Fact]
    public void A_corrected_entry_counts_in_place_of_the_old_one()
    {
        var wrong = BatchEntry.Measured("1", Side.A, "original gravity", 1.025, "SG", 0.001);
        var right = BatchEntry.Measured("2", Side.A, "original gravity", 1.052, "SG", 0.001) with
        {
            Supersedes = "1",
            Reason = "digits swapped",
        };
        Assert.Equal(Parity.Same, Line("original gravity", wrong, right, Number(Side.B, "original gravity", 1.052, "SG", 0.001)).Verdict);
    }

    // The published forms are tested in the Brewing room; this is the same table reached through the log.
    [Fact]
    public void Alcohol_attenuation_and_real_extract_follow_from_the_logged_gravities()
    {
        var log = new BatchLog([Number(null, "original gravity", 1.050, "SG", 0.001), Number(Side.A, "final gravity", 1.010, "SG", 0.001),
            Number(Side.B, "final gravity", 1.012, "SG", 0.001)]);
        Assert.Equal(5.3158, log.Alcohol(Side.A)!.PercentByVolume, 4);
        Assert.Equal(4.3375, log.Alcohol(Side.A)!.RealExtract, 4);
        var check = log.Parity(expected: []);
        Assert.Equal(["alcohol by volume", "apparent attenuation", "real extract"],
            check.Lines.Where(line => line.IsDerived).Select(line => line.Quantity));
        Assert.Equal("final gravity", Assert.Single(check.Confounds).Quantity);
    }

    // A public encyclopedia's article on gravity in brewing works 1.050 to 1.010 as 80 % apparent attenuation (in points) and 5.23 % vol
    // by one formula, 5.31 % by another; a collection of brewing methods (MEBAK B-590.80.530) takes real attenuation as 0.81 of the
    // apparent.
    [Fact]
    public void Attenuation_and_alcohol_of_a_logged_half_agree_with_published_figures()
    {
        var beer = new BatchLog([Number(Side.A, "original gravity", 1.050, "SG"), Number(Side.A, "final gravity", 1.010, "SG")])
            .Alcohol(Side.A)!;
        Assert.Equal(0.80, beer.ApparentAttenuation, 0.01);
        Assert.InRange(beer.PercentByVolume, 5.22, 5.32);
        Assert.Equal(0.81, beer.RealAttenuation / beer.ApparentAttenuation, 0.0101);
    }

    [Theory]
    [InlineData("original gravity", "SG", 1052)]
    [InlineData("pH", "pH", 44)]
    [InlineData("pitching temperature", "°C", 180)]
    public void A_value_where_no_brew_lies_is_refused(string quantity, string unit, double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Number(Side.A, quantity, value, unit));

    [Fact]
    public void A_quantity_that_needs_a_unit_is_refused_without_one() =>
        Assert.Throws<ArgumentException>(() => Word(Side.A, "original gravity", "1.052"));
}
