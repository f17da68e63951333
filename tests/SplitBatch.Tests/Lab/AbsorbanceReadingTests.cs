using UnitsNet;

namespace SplitBatch.Lab;

public class AbsorbanceReadingTests
{
    // A hop merchant's account of the method gives 0.5 as 25; the other points follow from the published factor of 50.
    [Theory]
    [InlineData(0.5, 25)]
    [InlineData(0.3, 15)]
    [InlineData(0.7, 35)]
    public void Fifty_times_the_absorbance_is_the_bitterness(double absorbance, double units) =>
        Assert.Equal(units, new AbsorbanceReading(absorbance).Units, 9);

    [Fact]
    public void Blank_dilution_and_path_are_taken_into_account()
    {
        Assert.Equal(24.6, new AbsorbanceReading(0.5, blank: 0.008).Units, 9);
        Assert.Equal(50, new AbsorbanceReading(0.5, dilution: 2).Units, 9);
        Assert.Equal(50, new AbsorbanceReading(0.5, path: Length.FromMillimeters(5)).Units, 9);
    }

    [Fact]
    public void A_blank_above_the_sample_is_refused() =>
        Assert.Contains("swapped", Assert.Throws<ArgumentOutOfRangeException>(() => new AbsorbanceReading(0.1, 0.5)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData(0.5, 0.02, 1, "The blank absorbs 0.020")]
    [InlineData(1.6, 0, 1, "thin the beer")]
    [InlineData(0.04, 0, 1, "1 to 4 BU")]
    [InlineData(0.15, 0, 1, "10 to 40 BU")]
    [InlineData(0.6, 0, 2, "10 to 40 BU")]
    [InlineData(0.75, 0, 1, "15 to 35 BU")]
    public void A_reading_outside_what_the_method_was_made_for_is_warned_of(double absorbance, double blank, double dilution,
        string warning) =>
            Assert.Contains(new AbsorbanceReading(absorbance, blank, dilution).Warnings,
                text => text.Contains(warning, StringComparison.Ordinal));

    [Fact]
    public void A_reading_in_range_has_no_warning() => Assert.Empty(new AbsorbanceReading(0.5, 0.005).Warnings);

    [Fact]
    public void A_reading_can_be_logged_as_a_result() =>
        Assert.Equal(25.2, new AbsorbanceReading(0.512, 0.008).AsResult("own/1", "K7").Value, 9);
}
