using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class HopFormDoseTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050, trubLiters: 1);

    private static double Units(HopCharge charge, IBitternessModel? model = null) =>
        BitternessEstimate.Of(Kettle, [charge], model).Value.Value;

    private static HopLot Lot(HopForm form, double percent) => new($"{form}", form, AlphaAcid.FromPercent(percent));

    [Fact]
    public void Forms_that_must_boil_differ_by_their_factor()
    {
        var cones = Units(HopCharge.Boil(Lot(HopForm.WholeCone, 10), Mass.FromGrams(30), 60));
        foreach (var form in (HopForm[])[HopForm.Pellet, HopForm.LupulinPellet, HopForm.Co2Extract])
        {
            Assert.Equal(HopForms.Default[form].Factor, Units(HopCharge.Boil(Lot(form, 10), Mass.FromGrams(30), 60)) / cones, 1e-9);
        }
    }

    /// <summary>1 g of 30 % iso-alpha acid at 82.5 % in 19 L (20 L less 1 L of trub): 13.03 mg/L.</summary>
    [Theory]
    [InlineData("Tinseth")]
    [InlineData("Kinetics")]
    public void Iso_extract_dosed_after_the_boil_gives_its_own_yield_by_every_model(string name)
    {
        var model = BitternessModels.All.Single(m => m.Name == name);
        Assert.Equal(1000 * 0.30 * 0.825 / 19, Units(HopCharge.Fermenter(Lot(HopForm.IsoExtract, 30), Mass.FromGrams(1)), model), 1e-9);
    }

    [Fact]
    public void Oil_adds_no_bitterness_and_no_plant_matter()
    {
        var oil = new HopLot("oil", HopForm.Oil, AlphaAcid.FromPercent(0));
        var match = ChargeMatch.AsGiven(Kettle, [HopCharge.Fermenter(oil, Mass.FromGrams(1))],
            [HopCharge.Fermenter(oil, Mass.FromGrams(1))]);
        Assert.Equal(0, match.A.Bitterness.Value);
        Assert.Equal(0, match.A.PlantMatter.Grams);
    }

    [Fact]
    public void Cones_in_the_fermenter_are_counted_as_nothing_and_say_so()
    {
        var estimate = BitternessEstimate.Of(Kettle, [HopCharge.Fermenter(Lot(HopForm.WholeCone, 10), Mass.FromGrams(60))]);
        Assert.Equal(0, estimate.Value.Value);
        Assert.Contains("a laboratory's bitterness value may still rise", Assert.Single(estimate.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void Iso_extract_can_be_matched_against_boiled_cones()
    {
        var match = ChargeMatch.Solve(Kettle, 30, Lot(HopForm.WholeCone, 10), Lot(HopForm.IsoExtract, 30), scale: Mass.FromGrams(0.01));
        Assert.Equal(AdditionStage.Fermenter, match.B.Charges[0].Stage);
        Assert.Equal(30, match.B.Bitterness.Value, 0.15);
        Assert.Equal(0, match.B.PlantMatter.Grams);
        Assert.Equal(match.A.HopMass.Kilograms * 7.5, match.ExtraWortLost.Liters, 1e-9);
    }

    [Fact]
    public void Rows_show_the_gravity_at_each_addition_and_add_to_the_estimate()
    {
        var kettle = Kettle.Metric(20, 1.050, boilMinutes: 60, evaporationLitersPerHour: 4);
        foreach (var model in BitternessModels.All)
        {
            var estimate = BitternessEstimate.Of(kettle,
                [HopCharge.FirstWort(Lot(HopForm.Pellet, 8), Mass.FromGrams(20)),
                    HopCharge.Boil(Lot(HopForm.WholeCone, 5), Mass.FromGrams(30), 15)], model);
            Assert.Equal(1 + 0.050 * 20 / 24, estimate.Charges[0].GravityAtAddition.Specific, 9);
            Assert.Equal(1 + 0.050 * 20 / 21, estimate.Charges[1].GravityAtAddition.Specific, 9);
            Assert.Equal(estimate.Value.Value, estimate.Charges.Sum(row => row.Bitterness.Value), 1e-9);
        }
    }
}
