using CsCheck;

namespace SplitBatch.Brewing;

public class GravityTests
{
    /// <summary>
    /// The quick table of degrees Plato against gravity points on a public page of 1990s origin (after the Plato tables, by
    /// De Clerck's fit), rows up to 20 °P; it prints whole points.
    /// </summary>
    [Theory]
    [InlineData(1, 4)]
    [InlineData(2, 8)]
    [InlineData(3, 12)]
    [InlineData(4, 16)]
    [InlineData(5, 20)]
    [InlineData(6, 24)]
    [InlineData(7, 28)]
    [InlineData(8, 32)]
    [InlineData(9, 36)]
    [InlineData(10, 40)]
    [InlineData(11, 44)]
    [InlineData(12, 48)]
    [InlineData(13, 53)]
    [InlineData(14, 57)]
    [InlineData(15, 61)]
    [InlineData(16, 65)]
    [InlineData(17, 70)]
    [InlineData(18, 74)]
    [InlineData(19, 78)]
    [InlineData(20, 83)]
    public void Plato_gives_the_points_of_a_public_table(double plato, double points) =>
        Assert.Equal(points, Gravity.FromPlato(plato).Points, 0.6);

    /// <summary>
    /// Anchors of the extract tables of the American Society of Brewing Chemists, from memory: five decimals of specific gravity.
    /// </summary>
    [Theory]
    [InlineData(5, 1.01968)]
    [InlineData(10, 1.04003)]
    [InlineData(12, 1.04838)]
    [InlineData(15, 1.06112)]
    [InlineData(20, 1.08297)]
    public void Plato_gives_the_anchors_of_the_extract_table(double plato, double specific) =>
        Assert.Equal(specific, Gravity.FromPlato(plato).Specific, 0.00003);

    [Fact]
    public void Plato_and_back_returns_the_value() =>
        Gen.Double[0.01, 42].Sample(plato => Assert.Equal(plato, Gravity.FromPlato(plato).Plato, 1e-9));

    [Theory]
    [InlineData(1050, "write 1.050")]
    [InlineData(12.4, "Gravity.FromPlato(12.4)")]
    public void A_reading_without_its_point_or_in_Plato_is_recognised(double specific, string hint)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Gravity.FromSpecific(specific));
        Assert.Contains(hint, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1.05)]
    public void Nonsense_is_refused(double specific) => Assert.Throws<ArgumentOutOfRangeException>(() => Gravity.FromSpecific(specific));
}
