using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

public class TinsethTests
{
    /// <summary>Palmer, How to Brew (2001), table of utilisation after Tinseth: cells as printed.</summary>
    [Theory]
    [InlineData(1.050, 30, 0.177)]
    [InlineData(1.060, 30, 0.162)]
    [InlineData(1.080, 60, 0.176)]
    [InlineData(1.080, 15, 0.087)]
    public void Cells_of_the_printed_table_agree_within_its_rounding(double gravity, double minutes, double printed) =>
        Assert.Equal(printed, Tinseth.Utilisation(gravity, minutes), 0.0005);

    [Fact]
    public void A_charge_in_a_kettle_gives_grams_times_alpha_times_utilisation_per_litre()
    {
        var kettle = Kettle.Metric(liters: 20, gravity: 1.050);
        var estimate = BitternessEstimate.Of(kettle, [HopCharge.Boil(HopLot.Cones("cones", 6), Mass.FromGrams(28), 60)]);
        Assert.Equal(19.37578, estimate.Value.Value, 5);
        Assert.Equal("19.4 IBU by Tinseth, in 20.0 L of 1.050 (12.4 °P) at the end of a 60 min boil", estimate.ToString());
    }

    /// <summary>The ounce and US-gallon form of the formula has the constant 7490.</summary>
    [Fact]
    public void Ounces_and_gallons_give_the_constant_of_the_US_form()
    {
        var kettle = Kettle.Us(gallons: 5, gravity: 1.050);
        var estimate = BitternessEstimate.Of(kettle, [HopCharge.Boil(HopLot.Cones("cones", 6), Mass.FromOunces(1), 60)]);
        Assert.Equal(0.23066408 * 0.06 * 1 * 7490 / 5, estimate.Value.Value, 0.01);
    }
}
