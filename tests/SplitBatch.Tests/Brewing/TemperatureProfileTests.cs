using UnitsNet;

namespace SplitBatch.Brewing;

public class TemperatureProfileTests
{
    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static Duration Min(double minutes) => Duration.FromMinutes(minutes);

    [Fact]
    public void Lines_and_holds_join()
    {
        var profile = TemperatureProfile.From(C(100)).CoolTo(C(90), Min(5)).Hold(Min(20)).CoolTo(C(20), Min(10));
        Assert.Equal(35, profile.Length.Minutes);
        Assert.Equal(95, profile.At(Min(2.5)).DegreesCelsius, 9);
        Assert.Equal(90, profile.At(Min(25)).DegreesCelsius, 9);
        Assert.Equal(55, profile.At(Min(30)).DegreesCelsius, 9);
        Assert.Equal(20, profile.At(Min(300)).DegreesCelsius, 9);
    }

    [Fact]
    public void Cooling_towards_the_surroundings_halves_the_excess()
    {
        var profile = TemperatureProfile.From(C(100)).CoolTowards(C(20), halving: Min(30), Min(90));
        Assert.Equal(60, profile.At(Min(30)).DegreesCelsius, 0.01);
        Assert.Equal(30, profile.At(Min(90)).DegreesCelsius, 0.01);
    }

    [Fact]
    public void Fahrenheit_given_as_Celsius_is_noticed() =>
        Assert.Contains("were degrees Fahrenheit given",
            Assert.Throws<ArgumentOutOfRangeException>(() => TemperatureProfile.From(C(176))).Message, StringComparison.Ordinal);

    [Fact]
    public void Readings_must_start_at_flame_out_and_rise_in_time()
    {
        Assert.Contains("starts with a reading at flame-out",
            Assert.Throws<ArgumentException>(() => TemperatureProfile.FromReadings([(Min(2), C(98))])).Message, StringComparison.Ordinal);
        Assert.Contains("Reading 3",
            Assert.Throws<ArgumentException>(
                () => TemperatureProfile.FromReadings([(Min(0), C(98)), (Min(9), C(90)), (Min(9), C(88))])).Message,
                StringComparison.Ordinal);
    }
}
