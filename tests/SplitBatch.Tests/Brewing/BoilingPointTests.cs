using UnitsNet;

namespace SplitBatch.Brewing;

public class BoilingPointTests
{
    /// <summary>
    /// Common practice, no source: about 1 °F for each 550 ft (the figure that Garetz's altitude factor also uses). Agreement to 0.1 °C.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1650)]
    [InlineData(5500)]
    [InlineData(9900)]
    public void Water_boils_about_one_degree_Fahrenheit_lower_for_each_550_feet(double feet) =>
        Assert.Equal(212 - feet / 550, BoilingPoint.At(Length.FromFeet(feet)).DegreesFahrenheit, 0.18);

    [Fact]
    public void Feet_given_as_metres_are_noticed() =>
        Assert.Contains("were feet given as metres",
            Assert.Throws<ArgumentOutOfRangeException>(() => BoilingPoint.At(Length.FromMeters(7200))).Message, StringComparison.Ordinal);
}
