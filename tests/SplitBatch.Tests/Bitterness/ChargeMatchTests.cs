using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class ChargeMatchTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", alphaPercent: 6.8);
    private static readonly HopLot Pellets = HopLot.Pellets("pellets", alphaPercent: 8.3);
    private static readonly HopForms Alike = HopForms.Default.With(HopForm.Pellet, 1.0, "no difference of form");

    [Fact]
    public void With_forms_alike_equal_bitterness_needs_grams_in_the_inverse_ratio_of_alpha_acid()
    {
        var match = ChargeMatch.Solve(Kettle, target: 32, Cones, Pellets, scale: Mass.FromGrams(1e-6), forms: Alike);
        Assert.Equal(8.3 / 6.8, match.HopMassRatio, 6);
        Assert.Equal(32, match.A.Bitterness.Value, 4);
        Assert.Equal(32, match.B.Bitterness.Value, 4);
    }

    [Fact]
    public void Pellets_that_yield_more_need_less_alpha_acid()
    {
        var match = ChargeMatch.Solve(Kettle, target: 32, Cones, Pellets, scale: Mass.FromGrams(1e-6));
        Assert.Equal(1.07, match.A.AlphaMass / match.B.AlphaMass, 5);
    }

    [Fact]
    public void B_is_matched_to_A_as_weighed_so_only_one_rounding_is_left()
    {
        var match = ChargeMatch.Solve(Kettle, target: 32, Cones, Pellets, scale: Mass.FromGrams(5));
        Assert.Equal(0, match.A.HopMass.Grams % 5, 9);
        Assert.Equal(0, match.B.HopMass.Grams % 5, 9);
        var perGram = match.B.Bitterness.Value / match.B.HopMass.Grams;
        Assert.InRange(Math.Abs(match.Mismatch), 0, 2.5 * perGram + 1e-9);
        Assert.Contains("weigh on a finer one", Assert.Single(match.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void Extra_plant_matter_wort_and_cost_follow_from_the_masses()
    {
        var match = ChargeMatch.Solve(
            Kettle, target: 32, Cones with { PricePerKilogram = 30, BetaPercent = 4.3 }, Pellets with { PricePerKilogram = 45 },
            forms: Alike);
        var (a, b) = (match.A.HopMass.Grams, match.B.HopMass.Grams);
        Assert.Equal(a * (1 - 0.068 - 0.043) - b * (1 - 0.083), match.ExtraPlantMatter.Grams, 9);
        Assert.Equal(a / 1000 * 7.5 - b / 1000 * 6.5, match.ExtraWortLost.Liters, 9);
        Assert.Equal((decimal)a * 0.030m - (decimal)b * 0.045m, match.ExtraCost!.Value, 6);
        Assert.Equal(20 - a / 1000 * 7.5, match.A.IntoFermenter.Liters, 9);
    }

    [Fact]
    public void A_kettle_in_gallons_is_answered_in_ounces()
    {
        var match = ChargeMatch.Solve(Kettle.Us(gallons: 5.3, gravity: 1.050), target: 32, Cones, Pellets);
        Assert.Equal(0.05, match.Scale.Ounces, 12);
        Assert.Equal(
            "A 1.45 oz cones and B 1.1 oz pellets: 32.1 and 31.8 IBU by Tinseth, −0.3 IBU left by rounding to 0.05 oz; A carries 1.3 "
                + "times the hops of B, 0.3 oz more plant matter",
            match.ToString());
        Assert.StartsWith("A: 1.45 oz cones, 60 min in the boil; 0.099 oz alpha acid", match.A.ToString(), StringComparison.Ordinal);
        Assert.Equal("32.1 IBU by Tinseth, in 5.3 gal of 1.050 (12.4 °P) at the end of a 60 min boil", match.A.Estimate.ToString());
    }

    /// <summary>What a brewer changes in one cell: all the numbers, and nothing else.</summary>
    [Fact]
    public void The_whole_calculation_fits_one_cell()
    {
        var kettle = Kettle.Metric(liters: 20, gravity: 1.050, boilMinutes: 60, evaporationLitersPerHour: 3);
        var match = ChargeMatch.Solve(kettle, target: 32, HopLot.Cones("cones", alphaPercent: 6.8),
            HopLot.Pellets("pellets", alphaPercent: 8.3));
        var doubt = match.Uncertainty(draws: 20_000, criticalDifference: 3.5, tasteMargin: 5);
        Assert.Equal(match.Mismatch, doubt.Mean.Difference, 0.1);
        Assert.Equal(4, match.Compare(Side.B).Rows.Length);
        Assert.Contains("Chance of a difference beyond the taste margin of 5.0 IBU", doubt.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_match_reads_as_a_sentence()
    {
        var match = ChargeMatch.Solve(Kettle, target: 32, Cones, Pellets);
        Assert.Equal(
            "A 41 g cones and B 31 g pellets: 32.2 and 31.8 IBU by Tinseth, −0.4 IBU left by rounding to 1 g; A carries 1.3 times the "
                + "hops of B, 10 g more plant matter",
            match.ToString());
    }
}
