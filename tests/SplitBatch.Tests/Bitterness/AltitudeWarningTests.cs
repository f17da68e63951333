using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>
/// Published rates: at 95 °C the isomerisation rate is 0.649 of that at 100 °C (Malowicki and Shellhammer 2005, worked from the printed
/// Arrhenius line).
/// </summary>
public class AltitudeWarningTests
{
    private static readonly HopCharge[] Charges = [HopCharge.Boil(HopLot.Cones("cones", 5), Mass.FromGrams(50), 60)];

    [Theory]
    [InlineData("Tinseth")]
    [InlineData("Rager")]
    public void A_formula_from_near_sea_level_warns_where_the_kettle_boils_cooler(string name)
    {
        var model = BitternessModels.All.Single(m => m.Name == name);
        Assert.Equal(
            $"At 1,500 m the wort boils at about 95.0 °C, where alpha acid isomerises 35 % more slowly than at 100 °C; {name} was made "
                + $"near sea level and does not count that, so the beer will be less bitter than estimated.",
            Assert.Single(BitternessEstimate.Of(Kettle.Metric(20, 1.050, altitudeMeters: 1500), Charges, model).Warnings));
        Assert.Empty(BitternessEstimate.Of(Kettle.Metric(20, 1.050, altitudeMeters: 300), Charges, model).Warnings);
        Assert.False(ModelComparison.Of(Kettle.Metric(20, 1.050, altitudeMeters: 1500), Charges, [model]).Rows[0].InRange);
    }

    [Fact]
    public void A_kettle_in_feet_is_warned_in_feet_and_Fahrenheit() =>
        Assert.StartsWith(
            "At 5,280 ft the wort boils at about 202 °F, where",
            Assert.Single(BitternessEstimate.Of(Kettle.Us(5, 1.050, altitudeFeet: 5280), Charges).Warnings),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("Garetz")]
    [InlineData("Kinetics")]
    public void A_model_that_counts_the_altitude_itself_does_not_warn(string name) =>
        Assert.Empty(
            BitternessEstimate.Of(Kettle.Metric(20, 1.050, altitudeMeters: 1500), Charges,
                BitternessModels.All.Single(m => m.Name == name)).Warnings);

    [Fact]
    public void Kinetics_says_how_much_of_it_is_extrapolated()
    {
        var stand = Kettle.Metric(20, 1.050) with
        {
            AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(80)).Hold(Duration.FromMinutes(20)),
        };
        var late = BitternessEstimate.Of(stand, [HopCharge.Whirlpool(HopLot.Cones("cones", 5), Mass.FromGrams(50))],
            BitternessModels.Kinetics);
        Assert.Equal("cones: 100 % of its isomerisation happens below 90 °C (194 °F), where Kinetics is extrapolated from rates measured "
            + "in hotter wort.", Assert.Single(late.Warnings));
        Assert.Empty(BitternessEstimate.Of(stand, Charges, BitternessModels.Kinetics).Warnings);
    }
}
