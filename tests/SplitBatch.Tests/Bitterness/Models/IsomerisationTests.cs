using SplitBatch.Brewing;
using UnitsNet;
using static SplitBatch.Bitterness.BitternessReference;

namespace SplitBatch.Bitterness.Models;

public class IsomerisationTests
{
    /// <summary>tests/reference/bitterness/kinetics.py: SciPy integrates the two rate equations over each temperature profile.</summary>
    [Fact]
    public void Alpha_and_iso_alpha_acid_agree_with_numerical_integration_in_SciPy()
    {
        foreach (var row in Rows("kinetics.csv"))
        {
            var points = row[1].Split(' ').Select(point => point.Split(':')).Select(p => (Number(p[0]), Number(p[1]))).ToArray();
            var step = row[0] == "hold"
                ? Isomerisation.Hold(points[0].Item2, points[1].Item1)
                : Isomerisation.Over(
                    TemperatureProfile.FromReadings(
                        points.Select(p => (Duration.FromMinutes(p.Item1), Temperature.FromDegreesCelsius(p.Item2)))), 0);
            var tolerance = row[0] == "hold" ? 1e-9 : 1e-5;
            Assert.Equal(Number(row[2]), step.AlphaLeft, tolerance);
            Assert.Equal(Number(row[3]), step.IsoMade, tolerance);
            Assert.Equal(Number(row[4]), step.Conversion, tolerance);
        }
    }

    /// <summary>Malowicki and Shellhammer (2005), abstract: activation energies of 98.6 and 108.0 kJ/mol.</summary>
    [Fact]
    public void The_rates_have_the_published_activation_energies()
    {
        static double Energy(Func<Temperature, double> rate)
        {
            var (low, high) = (Temperature.FromDegreesCelsius(90), Temperature.FromDegreesCelsius(130));
            return 8.314462e-3 * Math.Log(rate(high) / rate(low)) / (1 / low.Kelvins - 1 / high.Kelvins);
        }

        Assert.Equal(98.6, Energy(Isomerisation.K1), 0.05);
        Assert.Equal(108.0, Energy(Isomerisation.K2), 0.05);
    }

    /// <summary>
    /// Malowicki and Shellhammer (2005), abstract: losses are pronounced beyond two half-lives of alpha acid. Iso-alpha acid peaks after
    /// that.
    /// </summary>
    [Theory]
    [InlineData(90)]
    [InlineData(100)]
    [InlineData(130)]
    public void Iso_alpha_acid_peaks_after_two_half_lives_of_alpha_acid(double celsius)
    {
        var temperature = Temperature.FromDegreesCelsius(celsius);
        var twoHalfLives = 2 * Math.Log(2) / Isomerisation.K1(temperature);
        double Iso(double minutes) => Isomerisation.Hold(temperature, Duration.FromMinutes(minutes)).IsoMade;
        Assert.True(Iso(twoHalfLives * 1.05) > Iso(twoHalfLives));
        Assert.True(Iso(twoHalfLives * 1.5) > Iso(twoHalfLives * 2));
    }

    /// <summary>
    /// Kappler et al. (2010), J. Inst. Brew. 116, 332-338, abstract: over 20 % of dosed iso-alpha acid was gone after 90 min of boiling.
    /// </summary>
    [Fact]
    public void Dosed_iso_alpha_acid_loses_over_20_percent_in_90_minutes_of_boiling() =>
        Assert.InRange(1 - Isomerisation.Hold(Temperature.FromDegreesCelsius(100), Duration.FromMinutes(90)).IsoLeft, 0.20, 0.30);

    /// <summary>
    /// The default yield makes a 60 min boil of cones agree with Justus (2018): 44.0 % in the kettle less 33.7 % to the beer.
    /// </summary>
    [Fact]
    public void The_default_yield_gives_the_mean_utilisation_published_for_breweries()
    {
        var exposure = new Exposure { BoilMinutes = 60, BoilCelsius = 100, MeanGravity = 1.048, Before = ThermalStep.None,
            After = ThermalStep.None };
        Assert.Equal(0.440 * (1 - 0.337), BitternessModels.Kinetics.Utilisation(exposure), 0.0005);
    }

    [Fact]
    public void Stretches_chain_so_that_two_halves_make_a_whole()
    {
        var whole = Isomerisation.Hold(100, 60);
        var halves = Isomerisation.Hold(100, 25).Then(Isomerisation.Hold(100, 35));
        Assert.Equal(whole.AlphaLeft, halves.AlphaLeft, 1e-12);
        Assert.Equal(whole.IsoMade, halves.IsoMade, 1e-12);
        Assert.Equal(whole.IsoLeft, halves.IsoLeft, 1e-12);
    }

    [Fact]
    public void A_stand_from_100_to_80_degrees_in_half_an_hour_counts_as_14_minutes_of_boil()
    {
        var profile = TemperatureProfile.From(Temperature.FromDegreesCelsius(100))
            .CoolTo(Temperature.FromDegreesCelsius(80), Duration.FromMinutes(30));
        var kettle = Kettle.Metric(20, 1.050) with { AfterBoil = profile };
        var exposure = Exposure.Of(kettle, HopCharge.Whirlpool(HopLot.Cones("cones", 5), Mass.FromGrams(20)));
        Assert.Equal(14.1326, exposure.EquivalentMinutes, 0.005);
    }

    [Fact]
    public void First_wort_hops_gain_a_little_from_steeping()
    {
        var kettle = Kettle.Metric(20, 1.050);
        double Of(HopCharge charge) => BitternessEstimate.Of(kettle, [charge], BitternessModels.Kinetics).Value.Value;
        var cones = HopLot.Cones("cones", 5);
        var boiled = Of(HopCharge.Boil(cones, Mass.FromGrams(40), 60));
        var steeped = Of(HopCharge.FirstWort(cones, Mass.FromGrams(40), minutesBeforeBoil: 40));
        Assert.InRange(steeped / boiled, 1.005, 1.05);
    }
}
