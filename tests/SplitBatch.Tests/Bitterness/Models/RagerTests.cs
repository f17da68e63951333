namespace SplitBatch.Bitterness.Models;

public class RagerTests
{
    /// <summary>
    /// Rager (1990), Zymurgy 13(4), 53-54, as repeated in a public hop FAQ of the 1990s (bands to 45 min seen there; 46 min and
    /// longer from memory). First and last minute of each band.
    /// </summary>
    [Theory]
    [InlineData(0, 5, 5.0)]
    [InlineData(6, 10, 6.0)]
    [InlineData(11, 15, 8.0)]
    [InlineData(16, 20, 10.1)]
    [InlineData(21, 25, 12.1)]
    [InlineData(26, 30, 15.3)]
    [InlineData(31, 35, 18.8)]
    [InlineData(36, 40, 22.8)]
    [InlineData(41, 45, 26.9)]
    [InlineData(46, 50, 28.1)]
    [InlineData(51, 60, 30.0)]
    public void The_printed_table_is_kept_and_the_smooth_curve_stays_near_it(double from, double to, double percent)
    {
        Assert.Equal(percent, 100 * Rager.FromTable(from), 1e-9);
        Assert.Equal(percent, 100 * Rager.FromTable(to), 1e-9);
        Assert.Equal(percent, 100 * Rager.FromFit((from + to) / 2), 1.0);
    }

    /// <summary>A public digest of 1992: wort of 1.090 turns 46 IBU into 38.</summary>
    [Fact]
    public void Wort_of_1_090_turns_46_units_into_38()
    {
        var model = new Rager();
        var thin = model.Utilisation(new Exposure { BoilMinutes = 60, BoilCelsius = 100, MeanGravity = 1.050 });
        var strong = model.Utilisation(new Exposure { BoilMinutes = 60, BoilCelsius = 100, MeanGravity = 1.090 });
        Assert.Equal(38, 46 * strong / thin, 0.5);
    }

    /// <summary>The smooth curve at full precision, worked apart from this code from Hall's printed constants.</summary>
    [Theory]
    [InlineData(0, 5.1208)]
    [InlineData(10, 6.6992)]
    [InlineData(30, 17.1104)]
    [InlineData(60, 30.8195)]
    [InlineData(90, 31.9251)]
    public void The_smooth_curve_follows_its_constants(double minutes, double percent) =>
        Assert.Equal(percent, 100 * Rager.FromFit(minutes), 4);
}
