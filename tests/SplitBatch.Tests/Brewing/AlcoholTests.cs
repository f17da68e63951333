namespace SplitBatch.Brewing;

public class AlcoholTests
{
    /// <summary>Balling's relations worked by hand from the cubic for degrees Plato; the short form beside them.</summary>
    [Theory]
    [InlineData(1.048, 1.011, 4.4595, 3.8426, 4.9132, 4.8563)]
    [InlineData(1.050, 1.010, 4.3375, 4.1616, 5.3158, 5.2500)]
    [InlineData(1.080, 1.016, 6.8358, 6.7166, 8.6305, 8.4000)]
    public void Real_extract_and_alcohol_follow_Balling(double original, double final, double extract, double byWeight, double byVolume,
        double shortForm)
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

public class AlcoholTableTests
{
    /// <summary>
    /// The excise table of the United Kingdom: alcohol by volume = (OG − PG) × f, in points (factors 0.125 to 0.135 seen in a public
    /// quotation of the notice; bands from memory). It is built for duty and reads a little low, so agreement is to 0.25 % vol.
    /// </summary>
    [Theory]
    [InlineData(1.036, 1.008, 0.129)]
    [InlineData(1.040, 1.010, 0.129)]
    [InlineData(1.048, 1.011, 0.130)]
    [InlineData(1.060, 1.013, 0.131)]
    [InlineData(1.080, 1.016, 0.132)]
    [InlineData(1.090, 1.018, 0.133)]
    public void Alcohol_by_volume_agrees_with_the_excise_table(double original, double final, double factor) =>
        Assert.Equal(1000 * (original - final) * factor, Alcohol.FromSpecific(original, final).PercentByVolume, 0.25);

    /// <summary>
    /// Balling's alcohol factors by original extract, as compiled by F. Eckhardt in a public brewing digest: alcohol by weight is the
    /// fall in apparent extract times the factor. The digest's factors lie 1 to 2 % under the formula in use today.
    /// </summary>
    [Theory]
    [InlineData(10, 0.4148)]
    [InlineData(12, 0.4187)]
    [InlineData(14, 0.4226)]
    [InlineData(16, 0.4267)]
    [InlineData(20, 0.4351)]
    public void Alcohol_by_weight_agrees_with_Ballings_factors(double plato, double factor)
    {
        var alcohol = new Alcohol(Gravity.FromPlato(plato), Gravity.FromPlato(plato / 4));
        Assert.Equal(0.75 * plato * factor, alcohol.PercentByWeight, 0.02 * alcohol.PercentByWeight);
    }
}
