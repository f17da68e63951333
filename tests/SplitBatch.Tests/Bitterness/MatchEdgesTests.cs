using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using SplitBatch.Numbers;
using UnitsNet;
using static SplitBatch.Bitterness.InventedDose;

namespace SplitBatch.Bitterness;

/// <summary>What a match refuses, what it warns of, and what it takes from the second kettle.</summary>
public class MatchEdgesTests
{
    private static readonly Kettle Kettle = Kettle.Metric(20, 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5), Pellets = HopLot.Pellets("pellets", 10);

    /// <summary>Bitterness that no mass of hops takes past 20 IBU.</summary>
    private static readonly InventedModel Saturates = new("Saturates", _ => 0.25, sum => 20 * (1 - Math.Exp(-sum / 20)));

    private static string Refused(Action act) => Assert.ThrowsAny<ArgumentException>(act).Message;

    [Fact]
    public void What_no_mass_can_reach_is_refused_with_the_reason()
    {
        HopCharge fixedCones = Boil(Cones, 50) with { IsFixed = true }, oil = Boil(HopLot.Oil("oil"), 5);
        Assert.Equal("No mass of cones adds bitterness here: all charges are fixed.",
            Refused(() => ChargeMatch.Solve(Kettle, 60, [fixedCones], [Boil(Pellets, 1)])));
        Assert.Equal("No mass of oil adds bitterness here: hop oil holds no alpha acid.",
            Refused(() => ChargeMatch.Solve(Kettle, 60, [oil], [Boil(Pellets, 1)])));
        Assert.Equal("No mass of cones, oil adds bitterness here: the charges are too late or too small; put one into the boil.",
            Refused(() => ChargeMatch.Solve(Kettle, 60, [fixedCones, oil], [Boil(Pellets, 1)])));
        Assert.Equal("No mass of pellets reaches 30.0 IBU.",
            Refused(() => ChargeMatch.Solve(Kettle, 30, Pellets, Cones, model: Saturates)));
        Assert.Equal(19,
            ChargeMatch.Solve(Kettle, 19, Pellets, Cones, model: Saturates, scale: Mass.FromGrams(0.001)).A.Bitterness.Value, 0.01);
        var alone = BitternessEstimate.Of(Kettle, [fixedCones]).Value.Value;
        Assert.Contains("already above",
            Refused(() => ChargeMatch.Solve(Kettle, alone - 0.1, [fixedCones, Boil(Pellets, 1)], [Boil(Pellets, 1)])),
            StringComparison.Ordinal);
        Assert.Equal(alone,
            ChargeMatch.Solve(Kettle, alone, [fixedCones, Boil(Pellets, 1)], [Boil(Pellets, 1)],
                scale: Mass.FromGrams(0.001)).A.Bitterness.Value, 0.01);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(150.1, 1)]
    [InlineData(30, 0)]
    [InlineData(30, -1)]
    [InlineData(30, 1000.1)]
    public void Targets_and_scales_outside_their_range_are_refused(double target, double scale) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ChargeMatch.Solve(Kettle, target, Cones, Pellets, scale: Mass.FromGrams(scale)));

    [Fact]
    public void The_ends_of_those_ranges_are_accepted()
    {
        Assert.Equal(150, ChargeMatch.Solve(Kettle, 150, Cones, Pellets).Target!.Value.Value);
        Assert.Equal(1000,
            ChargeMatch.Solve(Kettle.Metric(400, 1.050), 30, Cones, Pellets, scale: Mass.FromGrams(1000)).A.HopMass.Grams, 1e-9);
    }

    [Fact]
    public void Each_half_has_its_own_kettle_where_two_are_given()
    {
        var larger = Kettle.Metric(25, 1.050);
        HopCharge[] a = [Boil(Cones, 60)], b = [Boil(Cones, 60)];
        var given = ChargeMatch.AsGiven(Kettle, a, b, kettleB: larger);
        Assert.Equal(given.A.Bitterness.Value * 20 / 25, given.B.Bitterness.Value, 1e-9);
        var fine = Mass.FromGrams(1e-6);
        Assert.Equal(1.25, 1 / ChargeMatch.ToMatch(Kettle, a, b, scale: fine, kettleB: larger).HopMassRatio, 1e-6);
        Assert.Equal(1.25, 1 / ChargeMatch.Solve(Kettle, 30, a, b, scale: fine, kettleB: larger).HopMassRatio, 1e-6);
    }

    [Fact]
    public void Either_half_is_compared_with_its_own_charges()
    {
        var match = ChargeMatch.AsGiven(Kettle, [Boil(Cones, 60)], [Boil(Pellets, 60)]);
        Assert.Equal(match.A.Bitterness.Value, match.Compare(Side.A).Rows[0].Bitterness, 1e-9);
        Assert.Equal(match.B.Bitterness.Value, match.Compare(Side.B).Rows[0].Bitterness, 1e-9);
        Assert.Equal("Give at least one model to compare.", Refused(() => match.Compare(Side.A, [])).Split(" (")[0]);
        Assert.All(ModelComparison.Curves(Kettle, [Saturates], 30), point => Assert.Equal("Saturates", point.Model));
    }

    [Fact]
    public void Form_factors_of_ones_own_reach_estimate_and_comparison()
    {
        var forms = HopForms.Default.With(HopForm.Pellet, 1.5, "own");
        HopCharge[] charges = [Boil(Pellets, 30)];
        var factor = HopForms.Default[HopForm.Pellet].Factor;
        Assert.Equal(BitternessEstimate.Of(Kettle, charges).Value.Value * 1.5 / factor,
            BitternessEstimate.Of(Kettle, charges, forms: forms).Value.Value, 1e-9);
        Assert.Equal(1.5,
            ModelComparison.Of(Kettle, charges, forms: forms).Rows[0].Bitterness / BitternessEstimate.Of(Kettle, charges).Value.Value
                * factor, 1e-9);
        var standing = Kettle with
        {
            AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(20)),
        };
        Assert.Equal(ModelComparison.Of(standing, charges).Rows[0].StandEffect!.Value,
            ModelComparison.Of(standing, charges, forms: forms).Rows[0].StandEffect!.Value, 1e-9);
    }

    [Fact]
    public void A_beer_without_bitterness_is_compared_as_alike()
    {
        var none = ModelComparison.Of(Kettle, [Boil(HopLot.Oil("oil"), 5)]);
        Assert.All(none.Rows,
            row => Assert.Equal((0.0, 1.0, 0.0, 0.0), (row.Bitterness, row.AgainstFirst, row.GravityEffect, row.AltitudeEffect)));
    }

    [Fact]
    public void A_warning_of_both_halves_is_said_once_and_of_one_half_with_its_letter()
    {
        var thin = Kettle.Metric(20, 1.125);
        var both = ChargeMatch.AsGiven(thin, [Boil(Cones, 60)], [Boil(Cones, 60)], new Garetz()).Warnings;
        Assert.StartsWith("The mean gravity", Assert.Single(both), StringComparison.Ordinal);
        var a = ChargeMatch.AsGiven(thin, [Boil(Cones, 60)], [Boil(Cones, 60)], new Garetz(), kettleB: Kettle).Warnings;
        Assert.StartsWith("A: The mean gravity", Assert.Single(a), StringComparison.Ordinal);
        var b = ChargeMatch.AsGiven(Kettle, [Boil(Cones, 60)], [Boil(Cones, 60)], new Garetz(), kettleB: thin).Warnings;
        Assert.StartsWith("B: The mean gravity", Assert.Single(b), StringComparison.Ordinal);
    }

    /// <summary>A scale of 2 g is 5 % of 40 g and 8 % of 25 g.</summary>
    [Fact]
    public void A_scale_too_coarse_for_the_smallest_charge_of_either_half_is_named()
    {
        string[] Of(double a, double b) =>
            [.. ChargeMatch.AsGiven(Kettle, [Boil(Cones, 60), Boil(HopLot.Cones("none", 5), 0), Boil(HopLot.Cones("other", 5), a)],
                [Boil(Cones, b)], scale: Mass.FromGrams(2)).Warnings];
        Assert.Empty(Of(40, 60));
        Assert.Equal("The scale resolves 2 g, 8 % of the smallest charge; weigh on a finer one.", Assert.Single(Of(25, 60)));
        Assert.Equal("The scale resolves 2 g, 8 % of the smallest charge; weigh on a finer one.", Assert.Single(Of(60, 25)));
    }

    /// <summary>8 g/L is the highest rate behind the formulas (common practice, no source): 160 g in 20 L is at it.</summary>
    [Fact]
    public void Warnings_that_hold_by_any_model_stand_at_their_edges()
    {
        string[] Of(params HopCharge[] charges) =>
            [.. BitternessEstimate.Of(Kettle with
            {
                AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(20)),
            }, charges, BitternessModels.Kinetics).Warnings];
        Assert.Empty(Of(Boil(Cones, 160)));
        Assert.Contains("8.1 g/L of hops is beyond", Assert.Single(Of(Boil(Cones, 162))), StringComparison.Ordinal);
        Assert.Empty(Of(Boil(Cones, 100), HopCharge.Fermenter(HopLot.IsoExtract("iso", 30), Mass.FromGrams(1)),
            HopCharge.Fermenter(HopLot.Oil("oil"), Mass.FromGrams(1))));
        Assert.Equal("pellets: hops in the fermenter are counted as adding no bitterness; a laboratory's bitterness value may still rise.",
            Assert.Single(Of(Boil(Cones, 100), HopCharge.Fermenter(Pellets, Mass.FromGrams(200)))));
        var extract = HopLot.Extract("extract", 50);
        Assert.Empty(Of(Boil(extract, 5)));
        Assert.Empty(Of(HopCharge.FirstWort(extract, Mass.FromGrams(5))));
        Assert.Equal("extract: extract that has not been isomerised needs a full boil; little of it will bitter here.",
            Assert.Single(Of(HopCharge.Whirlpool(extract, Mass.FromGrams(5)))));
    }

    [Fact]
    public void A_formula_warns_of_height_stand_and_length_where_they_matter()
    {
        var high = Kettle.Us(5, 1.050, altitudeFeet: 5280);
        Assert.Empty(BitternessEstimate.Of(high, []).Warnings);
        Assert.Contains("more slowly than at 212 °F; Tinseth was made near sea level",
            Assert.Single(BitternessEstimate.Of(high, [Boil(Cones, 40)]).Warnings), StringComparison.Ordinal);
        Assert.Contains("more slowly than at 100 °C;",
            Assert.Single(BitternessEstimate.Of(Kettle.Metric(20, 1.050, altitudeMeters: 1600), [Boil(Cones, 40)]).Warnings),
            StringComparison.Ordinal);

        var standing = Kettle with
        {
            AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(20)),
        };
        var minutes = 20 * Isomerisation.K1(95) / Isomerisation.K1(Kettle.BoilingTemperature.DegreesCelsius);
        Assert.Equal(FormattableString.Invariant($"Tinseth was made for wort cooled after the boil; the stand is counted as {minutes:0} ")
            + FormattableString.Invariant($"min more of boil for every charge, by the isomerisation rate."),
            Assert.Single(BitternessEstimate.Of(standing, [Boil(Cones, 40)]).Warnings));
        Assert.Equal(FormattableString.Invariant($"cones: Tinseth knows nothing of hops after flame-out; the stand is counted as ")
            + FormattableString.Invariant($"{minutes:0} min of boil by the isomerisation rate."),
            Assert.Single(BitternessEstimate.Of(standing, [HopCharge.Whirlpool(Cones, Mass.FromGrams(40))]).Warnings));

        var longest = new Tinseth().Range.LongestMinutes;
        var slow = Kettle.Metric(20, 1.050, boilMinutes: longest + 60);
        Assert.Empty(BitternessEstimate.Of(slow, [Boil(Cones, 40, longest)]).Warnings);
        Assert.Equal(FormattableString.Invariant($"cones: {longest + 60:0} min is longer than Tinseth was made for ({longest:0} min)."),
            Assert.Single(BitternessEstimate.Of(slow, [Boil(Cones, 40, longest + 60)]).Warnings));
    }

    /// <summary>
    /// First wort at 75 °C and a boil at 88 °C (about 3,900 m) are cooler than the rates were measured in; shares by hand from the rates.
    /// </summary>
    [Fact]
    public void Kinetics_counts_a_cool_first_wort_a_cool_boil_and_a_late_charge()
    {
        var first = HopCharge.FirstWort(Cones, Mass.FromGrams(40), 60);
        double boil = Isomerisation.K1(Kettle.BoilingTemperature.DegreesCelsius), before = Isomerisation.K1(75) * 60;
        var brief = Kettle.Metric(20, 1.050, boilMinutes: 10);
        Assert.StartsWith(FormattableString.Invariant($"cones: {100 * before / (before + (10 * boil)):0} % of its isomerisation happens ")
            + FormattableString.Invariant($"below 90 °C"), Assert.Single(Warnings(brief, first)), StringComparison.Ordinal);
        Assert.Empty(Warnings(brief with { FirstWort = Temperature.FromDegreesCelsius(95) }, first));
        Assert.Empty(Warnings(brief with { FirstWort = Temperature.FromDegreesCelsius(90) }, first));
        Assert.Empty(Warnings(Kettle, Boil(Cones, 40, 0)));

        var peak = Kettle.Metric(20, 1.050, altitudeMeters: 3900);
        Assert.InRange(peak.BoilingTemperature.DegreesCelsius, 80, 90);
        Assert.Contains("cones: 100 % of its isomerisation happens below 90 °C", Warnings(peak, Boil(Cones, 40)).Last(),
            StringComparison.Ordinal);

        var profile = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(10))
            .CoolTo(Temperature.FromDegreesCelsius(80), Duration.FromMinutes(0.001)).Hold(Duration.FromMinutes(10));
        var standing = Kettle with { AfterBoil = profile };
        double hot = Isomerisation.K1(95), cool = Isomerisation.K1(80) * 10;
        Assert.StartsWith(FormattableString.Invariant($"cones: {100 * cool / (cool + (5 * hot)):0} % of"),
            Assert.Single(Warnings(standing, HopCharge.Whirlpool(Cones, Mass.FromGrams(40), 5))), StringComparison.Ordinal);
        Assert.StartsWith("cones: 100 % of", Assert.Single(Warnings(standing, HopCharge.Whirlpool(Cones, Mass.FromGrams(40), 11))),
            StringComparison.Ordinal);
        Assert.Contains("The mean gravity of the boil, 1.140, is outside",
            Assert.Single(Warnings(Kettle.Metric(20, 1.140), Boil(Cones, 40))), StringComparison.Ordinal);

        static string[] Warnings(Kettle kettle, HopCharge charge) =>
            [.. BitternessEstimate.Of(kettle, [charge], BitternessModels.Kinetics).Warnings];
    }

    /// <summary>The correction of the beer as a whole is shared out among the charges that it is about, and no others.</summary>
    [Fact]
    public void A_row_says_what_is_used_after_the_correction_of_the_beer()
    {
        HopCharge cones = Boil(Cones, 40), iso = HopCharge.Fermenter(HopLot.IsoExtract("iso", 30), Mass.FromGrams(1));
        var rows = BitternessEstimate.Of(Kettle, [cones, iso], Saturates).Charges;
        var plain = 40 * 0.05 * 0.25 * 1000 / 20;
        var settled = 20 * (1 - Math.Exp(-plain / 20)) / plain;
        Assert.Equal(0.25 * settled, rows[0].Utilisation, 1e-12);
        Assert.Equal(HopForms.Default[HopForm.IsoExtract].DirectYield!.Value, rows[1].Utilisation, 1e-12);
    }

    [Fact]
    public void Quantiles_sort_what_falls_into_one_bin()
    {
        double[] crowded = [5, 3, 9, 1, 7, 2, 8, 6, 4, 1e9];
        Assert.Equal([1, 3.25, 5.5, 1e9], Quantiles.Of(crowded, 0, 0.25, 0.5, 1));
    }
}
