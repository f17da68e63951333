using CsCheck;
using UnitsNet;

namespace SplitBatch.Brewing;

public class KettleTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050, boilMinutes: 90, evaporationLitersPerHour: 3);

    [Fact]
    public void Volume_and_gravity_at_each_addition_follow_evaporation()
    {
        Assert.Equal(24.5, Kettle.VolumeAtStart.Liters, 12);
        Assert.Equal(1 + 0.050 * 20 / 24.5, Kettle.GravityAtStart.Specific, 12);
        Assert.Equal(21.5, Kettle.VolumeAt(Duration.FromMinutes(30)).Liters, 12);
        Assert.Equal(1 + 0.050 * 20 / 21.5, Kettle.GravityAt(Duration.FromMinutes(30)).Specific, 12);
        Assert.Equal(1.050, Kettle.GravityAt(Duration.Zero).Specific, 12);
    }

    /// <summary>Grams of extract must not change: points times volume is the usual short cut, exact within 0.3 points.</summary>
    [Fact]
    public void Points_times_volume_keeps_the_extract_within_a_third_of_a_point() =>
        Gen.Select(Gen.Double[1.030, 1.110], Gen.Double[0, 0.3]).Sample((end, boiled) =>
        {
            var kettle = Kettle.Metric(20, end, evaporationLitersPerHour: 20 * boiled);
            static double Extract(Gravity gravity, Volume volume) => gravity.Plato / 100 * gravity.Specific * volume.Liters;
            var exact = Extract(kettle.Gravity, kettle.Volume);
            var start = kettle.GravityAtStart;
            var perPoint = Extract(Gravity.FromSpecific(start.Specific + 0.001), kettle.VolumeAtStart)
                - Extract(start, kettle.VolumeAtStart);
            Assert.InRange((Extract(start, kettle.VolumeAtStart) - exact) / perPoint, -0.31, 0.31);
        });

    /// <summary>Density of water: 958.4 kg/m³ at 100 °C and 998.2 at 20 °C (handbook values, from memory): 4 % of shrinkage.</summary>
    [Fact]
    public void Boiling_wort_shrinks_by_four_percent()
    {
        Assert.Equal(958.4, WaterDensity.KilogramsPerCubicMeter(100), 0.1);
        Assert.Equal(998.2, WaterDensity.KilogramsPerCubicMeter(20), 0.05);
        Assert.Equal(19.2, WaterDensity.Cold(Volume.FromLiters(20), Temperature.FromDegreesCelsius(100)).Liters, 0.01);
        Assert.Equal(20 / 0.9601, Kettle.HotVolume.Liters, 0.01);
    }

    [Fact]
    public void A_kettle_measured_hot_before_the_boil_comes_to_the_same()
    {
        var again = Kettle.FromStart(Kettle.HotVolumeAtStart, Kettle.BoilingTemperature, Kettle.GravityAtStart, Kettle.Boil,
            Kettle.Evaporation);
        Assert.Equal(Kettle.Volume.Liters, again.Volume.Liters, 9);
        Assert.Equal(Kettle.Gravity.Specific, again.Gravity.Specific, 9);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Kettle.FromStart(
            Volume.FromLiters(5), Temperature.FromDegreesCelsius(100), Kettle.Gravity, Duration.FromMinutes(60),
            VolumeFlow.FromLitersPerHour(9)));
        Assert.Contains("would boil away all", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void US_and_metric_name_the_same_kettle()
    {
        var us = Kettle.Us(gallons: 5, gravity: 1.050, boilMinutes: 60, evaporationGallonsPerHour: 1, altitudeFeet: 5280, trubQuarts: 2);
        var metric = Kettle.Metric(5 * 3.785411784, 1.050, 60, 3.785411784, 1609.344, 2 * 0.946352946);
        Assert.Equal(metric.VolumeAtStart.Liters, us.VolumeAtStart.Liters, 9);
        Assert.Equal(metric.BoilingTemperature.DegreesCelsius, us.BoilingTemperature.DegreesCelsius, 9);
        Assert.Equal(metric.TrubLoss.Liters, us.TrubLoss.Liters, 9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-20)]
    [InlineData(double.NaN)]
    public void An_empty_or_negative_kettle_is_refused(double liters)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Kettle.Metric(liters, 1.050));
        Assert.Contains("must be above zero", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_outside_the_boil_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Kettle.GravityAt(Duration.FromMinutes(91)));

    [Fact]
    public void Hours_for_minutes_and_negative_evaporation_are_refused()
    {
        Assert.Contains("hours given as minutes",
            Assert.Throws<ArgumentOutOfRangeException>(() => Kettle.Metric(20, 1.050, boilMinutes: 3600)).Message,
            StringComparison.Ordinal);
        Assert.Contains("zero or more",
            Assert.Throws<ArgumentOutOfRangeException>(() => Kettle.Metric(20, 1.050, evaporationLitersPerHour: -3)).Message,
            StringComparison.Ordinal);
    }
}
