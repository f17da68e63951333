using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

public class GaretzTests
{
    /// <summary>Garetz (1994), Using Hops, average yeast (from memory). First and last minute of each band.</summary>
    [Theory]
    [InlineData(0, 10, 0)]
    [InlineData(11, 15, 2)]
    [InlineData(16, 20, 5)]
    [InlineData(21, 25, 8)]
    [InlineData(26, 30, 11)]
    [InlineData(31, 35, 14)]
    [InlineData(36, 40, 16)]
    [InlineData(41, 45, 18)]
    [InlineData(46, 50, 19)]
    [InlineData(51, 60, 20)]
    [InlineData(61, 70, 21)]
    [InlineData(71, 80, 22)]
    [InlineData(81, 90, 23)]
    public void The_printed_table_is_kept_and_the_smooth_curve_stays_near_it(double from, double to, double percent)
    {
        Assert.Equal(percent, 100 * Garetz.FromTable(from), 1e-9);
        Assert.Equal(percent, 100 * Garetz.FromTable(to), 1e-9);
        Assert.Equal(percent, 100 * Garetz.FromFit((from + to) / 2), 1.0);
    }

    /// <summary>Worked apart from this code by iterating the hopping-rate factor to rest: 15 L boiled and topped up to 20 L.</summary>
    [Fact]
    public void A_concentrated_boil_topped_up_agrees_with_iteration()
    {
        var kettle = Kettle.Metric(liters: 15, gravity: 1.060) with { TopUp = Volume.FromLiters(5) };
        Assert.Equal(1.045, kettle.FinalGravity.Specific, 12);
        Assert.Equal(21.660387, Estimate(kettle), 5);
    }

    /// <summary>Worked apart from this code in the same way: 20 L at 5000 feet.</summary>
    [Fact]
    public void Altitude_lowers_it_as_published()
    {
        var kettle = Kettle.Metric(liters: 20, gravity: 1.050) with { Altitude = Length.FromFeet(5000) };
        Assert.Equal(19.864399, Estimate(kettle), 5);
    }

    /// <summary>The equation in its own result, iterated until it rests, is what the quadratic gives.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(30)]
    [InlineData(120)]
    public void The_quadratic_is_the_rest_point_of_the_iteration(double sum)
    {
        var wort = new WortState(FinalLiters: 20, BoilLiters: 16, AltitudeMeters: 900);
        double units = 20, before;
        do
        {
            before = units;
            units = sum / ((1 + 20.0 / 16 * units / 260) * (1 + 0.02 * (900 / 0.3048) / 550));
        }
        while (Math.Abs(units - before) > 1e-13);

        Assert.Equal(units, new Garetz().Settle(sum, wort), 1e-10);
    }

    [Fact]
    public void Thin_wort_earns_nothing_unless_asked()
    {
        var thin = new Exposure { BoilMinutes = 60, BoilCelsius = 100, MeanGravity = 1.030 };
        var usual = thin with { MeanGravity = 1.050 };
        Assert.Equal(new Garetz().Utilisation(usual), new Garetz().Utilisation(thin));
        Assert.Equal(new Garetz().Utilisation(usual) / 0.9, new Garetz(creditThinWort: true).Utilisation(thin), 12);
    }

    private static double Estimate(Kettle kettle) =>
        BitternessEstimate.Of(kettle, [HopCharge.Boil(HopLot.Cones("cones", 6), Mass.FromGrams(40), 60)],
            BitternessModels.Garetz).Value.Value;
}
