namespace SplitBatch.Brewing;

public class AlcoholTests
{
    /// <summary>Balling's relations worked by hand from the cubic for degrees Plato; the short form beside them.</summary>
    [Theory]
    [InlineData(1.048, 1.011, 4.4595, 3.8426, 4.9132, 4.8563)]
    [InlineData(1.050, 1.010, 4.3375, 4.1616, 5.3158, 5.2500)]
    [InlineData(1.080, 1.016, 6.8358, 6.7166, 8.6305, 8.4000)]
    public void Real_extract_and_alcohol_follow_Balling(double original, double final, double extract, double byWeight, double byVolume, double shortForm)
    {
        var alcohol = Alcohol.FromSpecific(original, final);
        Assert.Equal(extract, alcohol.RealExtract, 4);
        Assert.Equal(byWeight, alcohol.PercentByWeight, 4);
        Assert.Equal(byVolume, alcohol.PercentByVolume, 4);
        Assert.Equal(shortForm, alcohol.PercentByVolumeShort, 4);
    }

    [Fact]
    public void Swapped_readings_are_noticed()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Alcohol.FromSpecific(1.010, 1.050));
        Assert.Contains("were they swapped?", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_beer_lighter_than_water_is_more_than_wholly_attenuated_in_appearance_and_less_in_truth()
    {
        var alcohol = Alcohol.FromSpecific(1.080, 0.995);
        Assert.InRange(alcohol.ApparentAttenuation, 1.0, 1.1);
        Assert.InRange(alcohol.RealAttenuation, 0.8, 1.0);
    }

    [Fact]
    public void It_reads_as_a_sentence() => Assert.Equal(
        "4.9 % alcohol by volume, apparent attenuation 76 %, real extract 4.5 °P", Alcohol.FromSpecific(1.048, 1.011).ToString());
}
