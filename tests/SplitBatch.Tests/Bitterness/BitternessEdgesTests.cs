using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>
/// The edges of ranges, stages and rounding that the docstrings promise, and identities that hold whatever the constants are.
/// </summary>
public class BitternessEdgesTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5);
    private static readonly TemperatureProfile Stand = TemperatureProfile.From(Temperature.FromDegreesCelsius(95))
        .Hold(Duration.FromMinutes(20)).CoolTo(Temperature.FromDegreesCelsius(70), Duration.FromMinutes(10));

    /// <summary>
    /// Many draws at once are the draws one by one, for lengths that fill the processor's vectors and lengths that do not.
    /// </summary>
    [Fact]
    public void The_vector_form_of_a_model_is_the_model()
    {
        var standing = Kettle with { AfterBoil = Stand };
        HopCharge[] charges = [HopCharge.Boil(Cones, Mass.FromGrams(20), 30), HopCharge.FirstWort(Cones, Mass.FromGrams(20), 30),
            HopCharge.Whirlpool(Cones, Mass.FromGrams(20), 5)];
        foreach (var model in BitternessModels.All)
        foreach (var kettle in new[] { Kettle, standing })
        foreach (var charge in charges)
        {
            if (kettle.AfterBoil is null && charge.Stage == AdditionStage.Whirlpool) continue;
            var exposure = Exposure.Of(kettle, charge);
            for (var n = 0; n <= 9; n++)
            {
                double[] gravity = [.. Enumerable.Range(0, n).Select(i => 1.035 + (0.007 * i))],
                    minutes = [.. Enumerable.Range(0, n).Select(i => (11.0 * i) - 0.2)];
                var result = new double[n];
                model.Utilisation(exposure, gravity, minutes, result);
                for (var i = 0; i < n; i++)
                {
                    var one = model.Utilisation(exposure with { MeanGravity = gravity[i], BoilMinutes = minutes[i] });
                    Assert.Equal(one, result[i], 1e-12);
                }
            }
        }
    }

    [Fact]
    public void The_ends_of_a_range_belong_to_it()
    {
        var mean = Kettle.MeanGravity.Specific;
        HopCharge[] charge = [HopCharge.Boil(Cones, Mass.FromGrams(20), 60)];
        var exact = new ValidRange(mean, mean, 60, "own") { LowestBoil = Kettle.BoilingTemperature };
        Assert.True(exact.Contains(Kettle, charge));
        Assert.False((exact with { LowestGravity = mean + 1e-9, HighestGravity = 2 }).Contains(Kettle, charge));
        Assert.False((exact with { HighestGravity = mean - 1e-9, LowestGravity = 1 }).Contains(Kettle, charge));
        Assert.False((exact with { LongestMinutes = 59.999 }).Contains(Kettle, charge));
        Assert.False((exact with { LowestBoil = Kettle.BoilingTemperature + TemperatureDelta.FromDegreesCelsius(0.01) })
            .Contains(Kettle, charge));
        Assert.True((exact with { LowestBoil = null }).Contains(Kettle, charge));
        Assert.False((exact with { LongestMinutes = 59 }).Contains(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(20), 10), .. charge]));
    }

    [Fact]
    public void Each_stage_meets_its_own_part_of_the_wort()
    {
        var kettle = Kettle.Metric(20, 1.050, boilMinutes: 75) with { AfterBoil = Stand };
        double k1 = Isomerisation.K1(kettle.BoilingTemperature), held = Isomerisation.K1(95) * 15;
        var first = Exposure.Of(kettle, HopCharge.FirstWort(Cones, Mass.FromGrams(20), 40));
        Assert.Equal(75, first.BoilMinutes);
        Assert.Equal(Isomerisation.K1(75) * 40, first.Before.Conversion, 1e-15);
        Assert.Equal(1, first.TimeWeight);
        var boiled = Exposure.Of(kettle, HopCharge.Boil(Cones, Mass.FromGrams(20), 12));
        Assert.Equal((12.0, ThermalStep.None, 1.0), (boiled.BoilMinutes, boiled.Before, boiled.TimeWeight));
        Assert.Equal(Isomerisation.Over(Stand, Duration.Zero), boiled.After);
        Assert.Equal(12 + (boiled.After.Conversion / k1), boiled.EquivalentMinutes, 1e-12);
        foreach (var late in new[] { HopCharge.Whirlpool(Cones, Mass.FromGrams(20), 5), HopCharge.Cooling(Cones, Mass.FromGrams(20), 5) })
        {
            var exposure = Exposure.Of(kettle, late);
            Assert.Equal((0.0, ThermalStep.None), (exposure.BoilMinutes, exposure.Before));
            Assert.Equal(held + Isomerisation.Over(Stand, Duration.FromMinutes(20)).Conversion, exposure.After.Conversion, 1e-12);
            Assert.Equal(Isomerisation.K1(95) / k1, exposure.TimeWeight, 1e-12);
        }

        Assert.Equal(0, Exposure.Of(Kettle, HopCharge.Whirlpool(Cones, Mass.FromGrams(20))).TimeWeight);
        var cold = Exposure.Of(kettle, HopCharge.Fermenter(Cones, Mass.FromGrams(20)));
        Assert.Equal((0.0, ThermalStep.None, 0.0, 0.0), (cold.BoilMinutes, cold.After, cold.TimeWeight, cold.EquivalentMinutes));
    }

    [Fact]
    public void A_part_of_a_profile_is_what_is_left_of_it_and_cooler_means_cooler()
    {
        var steps = TemperatureProfile.From(Temperature.FromDegreesCelsius(90)).Hold(Duration.FromMinutes(10));
        Assert.Equal(Isomerisation.Hold(90, 6).Conversion, Isomerisation.Over(steps, Duration.FromMinutes(4)).Conversion, 1e-12);
        Assert.Equal(ThermalStep.None, Isomerisation.Over(steps, Duration.FromMinutes(10)));
        Assert.Equal(ThermalStep.None, Isomerisation.Over(steps, 0, below: 90));
        Assert.Equal(Isomerisation.Over(steps, 0), Isomerisation.Over(steps, 0, below: 90.001));
        var falling = steps.CoolTo(Temperature.FromDegreesCelsius(80), Duration.FromMinutes(5)).Hold(Duration.FromMinutes(8));
        var whole = Isomerisation.Over(falling, 0);
        var chained = Isomerisation.Hold(90, 10).Then(Isomerisation.Over(falling, 10));
        Assert.Equal(whole.IsoMade, chained.IsoMade, 1e-12);
        Assert.Equal(whole.Conversion, chained.Conversion, 1e-12);
        // A straight line's mean rate lies between those of its ends, and below the rate of its mean temperature only by the curve's bend.
        var line = whole.Conversion - ((Isomerisation.K1(90) * 10) + (Isomerisation.K1(80) * 8));
        Assert.InRange(line / 5, Isomerisation.K1(85), (Isomerisation.K1(80) + Isomerisation.K1(90)) / 2);
    }

    /// <summary>
    /// Iso-alpha acid there before a stretch decays with it: chaining from a stretch that made some is the sum of old and new.
    /// </summary>
    [Fact]
    public void Old_iso_alpha_acid_decays_while_new_is_made()
    {
        ThermalStep first = new(0.6, 0.3, 0.9, 0.5), next = new(0.5, 0.4, 0.8, 0.7);
        Assert.Equal(new ThermalStep(0.3, (0.6 * 0.4) + (0.3 * 0.8), 0.9 * 0.8, 1.2), first.Then(next));
        Assert.Equal(first, ThermalStep.None.Then(first));
        Assert.Equal(first, first.Then(ThermalStep.None));
    }

    [Fact]
    public void Formulas_choose_their_table_and_their_gravity_as_stated()
    {
        Exposure At(double gravity) => new() { BoilMinutes = 30, BoilCelsius = 100, MeanGravity = gravity };
        Assert.Equal(0.153, new Rager(TimeCurve.Table).Utilisation(At(1.050)), 1e-12);
        Assert.Equal(0.153 / 1.2, new Rager(TimeCurve.Table).Utilisation(At(1.090)), 1e-12);
        Assert.Equal(0.153, new Rager(TimeCurve.Table).Utilisation(At(1.030)), 1e-12);
        Assert.Equal(Rager.FromFit(30), new Rager().Utilisation(At(1.050)), 1e-12);
        Assert.Equal(0.11, new Garetz(TimeCurve.Table).Utilisation(At(1.050)), 1e-12);
        Assert.Equal(0.11 / 1.2, new Garetz(TimeCurve.Table).Utilisation(At(1.090)), 1e-12);
        Assert.Equal(0.11 / 1.2, new Garetz(TimeCurve.Table, creditThinWort: true).Utilisation(At(1.090)), 1e-12);
        Assert.Equal(Garetz.FromFit(30), new Garetz().Utilisation(At(1.050)), 1e-12);
        Assert.Equal(0, Garetz.FromFit(0));
        Assert.Equal(0, Tinseth.Utilisation(1.050, 0));
    }

    [Fact]
    public void A_yield_from_kettle_to_beer_is_a_share_and_scales_what_the_kettle_made()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new IsomerisationKinetics(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new IsomerisationKinetics(1.01));
        var exposure = Exposure.Of(Kettle, HopCharge.Boil(Cones, Mass.FromGrams(20), 60));
        Assert.Equal(Isomerisation.Hold(exposure.BoilCelsius, 60).IsoMade, new IsomerisationKinetics(1).Utilisation(exposure), 1e-12);
        Assert.Equal(new IsomerisationKinetics(1).Utilisation(exposure) / 4, new IsomerisationKinetics(0.25).Utilisation(exposure), 1e-12);
    }

    /// <summary>The warning names the share of isomerisation in wort below 90 °C, from a tenth up: here by hand from the rates.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(60)]
    public void Kinetics_warns_of_a_cool_stand_by_its_share(double boilMinutes)
    {
        var kettle = Kettle with
        {
            AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(5))
                .CoolTo(Temperature.FromDegreesCelsius(85), Duration.FromMinutes(0.001)).Hold(Duration.FromMinutes(40)),
        };
        var cool = Isomerisation.K1(85) * 40;
        var share = cool / (cool + (Isomerisation.K1(95) * 5) + (Isomerisation.K1(kettle.BoilingTemperature) * boilMinutes));
        var warnings =
            BitternessEstimate.Of(kettle, [HopCharge.Boil(Cones, Mass.FromGrams(20), boilMinutes)], BitternessModels.Kinetics).Warnings;
        var text = FormattableString.Invariant($"cones: {share * 100:0} % of its isomerisation happens below 90 °C");
        Assert.Equal(share >= 0.1, warnings.Any(warning => warning.StartsWith(text, StringComparison.Ordinal)));
        Assert.Equal(share >= 0.1, warnings.Any(warning => warning.Contains("extrapolated", StringComparison.Ordinal)));
    }

    [Fact]
    public void Each_charge_is_weighed_to_the_nearest_step_none_to_nothing_and_fixed_ones_stand()
    {
        HopCharge held = HopCharge.Boil(HopLot.Cones("held", 5), Mass.FromGrams(7.3), 60) with { IsFixed = true };
        HopCharge[] charges = [held, HopCharge.Boil(Cones, Mass.FromGrams(100), 60),
            HopCharge.Boil(HopLot.Cones("pinch", 5), Mass.FromGrams(1), 10),
            HopCharge.Boil(HopLot.Cones("nothing", 5), Mass.FromGrams(0), 10)];
        var fine = ChargeMatch.Solve(Kettle, 30, charges, charges, scale: Mass.FromGrams(1e-6)).A;
        var coarse = ChargeMatch.Solve(Kettle, 30, charges, charges, scale: Mass.FromGrams(4)).A;
        Assert.Equal(30, fine.Bitterness.Value, 1e-4);
        Assert.Equal(100, fine.Charges[1].Mass / fine.Charges[2].Mass, 1e-3);
        Assert.Equal([7.3, 0.0], new[] { fine.Charges[0].Mass.Grams, fine.Charges[3].Mass.Grams });
        Assert.Equal(7.3, coarse.Charges[0].Mass.Grams);
        Assert.Equal(Math.Round(fine.Charges[1].Mass.Grams / 4) * 4, coarse.Charges[1].Mass.Grams, 1e-9);
        Assert.Equal([4.0, 0.0], coarse.Charges.Skip(2).Select(charge => charge.Mass.Grams));
    }

    /// <summary>
    /// By hand: 50 g of cones hold 0.375 L, the trub 1 L; 2 g of 30 % iso-alpha acid at 82.5 % into what is left of 20 L.
    /// </summary>
    [Fact]
    public void A_dose_after_the_kettle_is_spread_over_what_reaches_the_fermenter()
    {
        var kettle = Kettle.Metric(20, 1.050, trubLiters: 1);
        HopCharge cones = HopCharge.Boil(Cones, Mass.FromGrams(50), 60),
            iso = HopCharge.Fermenter(HopLot.IsoExtract("iso", 30), Mass.FromGrams(2));
        var estimate = BitternessEstimate.Of(kettle, [cones, iso], BitternessModels.Garetz);
        Assert.Equal(2 * 0.30 * 0.825 * 1000 / (20 - 1 - 0.375), estimate.Charges[1].Bitterness.Value, 1e-9);
        Assert.Equal(estimate.Value.Value, estimate.Charges.Sum(row => row.Bitterness.Value), 1e-9);
        // The model's correction of the whole beer counts only its own charges.
        Assert.Equal(BitternessEstimate.Of(kettle, [cones], BitternessModels.Garetz).Value.Value,
            estimate.Charges[0].Bitterness.Value, 1e-9);
        Assert.Equal(0, BitternessEstimate.Of(kettle, [HopCharge.Fermenter(Cones, Mass.FromGrams(50))]).Value.Value);
        var thick = Kettle.Metric(20, 1.050, trubLiters: 19.7);
        Assert.Contains("nothing would reach the fermenter",
            Assert.Throws<ArgumentException>(() => BitternessEstimate.Of(thick, [cones, iso])).Message, StringComparison.Ordinal);
    }
}
