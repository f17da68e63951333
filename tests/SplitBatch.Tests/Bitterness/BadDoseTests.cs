using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class BadDoseTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5);

    [Fact]
    public void Pounds_for_ounces_are_recognised()
    {
        var message = Refusal(HopCharge.Boil(Cones, Mass.FromPounds(2), 60));
        Assert.Contains("45.4 g/L; accepted: up to 20.0 g/L. If ounces were meant, write 2 oz, in code Mass.FromOunces(2).", message,
            StringComparison.Ordinal);
        Assert.Contains("write 60 g, in code Mass.FromGrams(60)", Refusal(HopCharge.Boil(Cones, Mass.FromKilograms(60), 60)),
            StringComparison.Ordinal);
        Assert.Contains("ounces for grams?", Refusal(HopCharge.Boil(Cones, Mass.FromGrams(1700), 60)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_charge_after_flame_out_with_boil_minutes_is_recognised()
    {
        Assert.Contains("If 60 min in the boil are meant, use stage boil", Refusal(HopCharge.Whirlpool(Cones, Mass.FromGrams(50), 60)),
            StringComparison.Ordinal);
        var stand = Kettle with { AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(20)) };
        var error = Assert.Throws<ArgumentException>(
            () => BitternessEstimate.Of(stand, [HopCharge.Whirlpool(Cones, Mass.FromGrams(50), 60)]));
        Assert.Contains("after the end of the temperature profile (20 min)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_minutes_than_the_boil_lasts_are_refused() =>
        Assert.Contains("the boil lasts 60 min; accepted: 0 to 60 min", Refusal(HopCharge.Boil(Cones, Mass.FromGrams(50), 75)),
            StringComparison.Ordinal);

    [Fact]
    public void Negative_or_missing_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => HopCharge.Boil(Cones, Mass.FromGrams(-5), 60));
        Assert.Throws<ArgumentOutOfRangeException>(() => HopCharge.Boil(Cones, Mass.FromGrams(5), -60));
        Assert.ThrowsAny<ArgumentException>(() => HopCharge.Boil(Cones, Mass.FromGrams(double.NaN), 60));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-32)]
    [InlineData(320)]
    [InlineData(double.NaN)]
    public void A_target_that_is_no_bitterness_is_refused(double target) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ChargeMatch.Solve(Kettle, target, Cones, Cones));

    [Fact]
    public void A_dose_that_cannot_reach_the_target_says_why()
    {
        var oil = new HopLot("oil", HopForm.Oil, AlphaAcid.FromPercent(0));
        Assert.Contains("hop oil holds no alpha acid",
            Assert.Throws<ArgumentException>(() => ChargeMatch.Solve(Kettle, 30, Cones, oil)).Message, StringComparison.Ordinal);
        Assert.Contains("put one into the boil",
            Assert.Throws<ArgumentException>(() => ChargeMatch.Solve(Kettle, 30, Cones, Cones, minutes: 0)).Message,
            StringComparison.Ordinal);
        var held = HopCharge.Boil(Cones, Mass.FromGrams(100), 60) with { IsFixed = true };
        Assert.Contains("already above",
            Assert.Throws<ArgumentException>(
                () => ChargeMatch.Solve(Kettle, 10, [held, HopCharge.Boil(Cones, Mass.FromGrams(1), 10)], [held])).Message,
                StringComparison.Ordinal);
        Assert.Contains("without hop charges", Assert.Throws<ArgumentException>(() => ChargeMatch.Solve(Kettle, 10, [], [held])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Gravity_and_hop_rate_beyond_the_formula_are_warned_of()
    {
        var strong = BitternessEstimate.Of(Kettle.Metric(20, 1.140), [HopCharge.Boil(Cones, Mass.FromGrams(50), 60)]);
        Assert.Contains("The mean gravity of the boil, 1.140, is outside what Tinseth was made for (1.030 to 1.130).", strong.Warnings);
        var heavy = BitternessEstimate.Of(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(200), 10)]);
        Assert.Contains("10.0 g/L of hops is beyond", Assert.Single(heavy.Warnings), StringComparison.Ordinal);
        var late = Kettle with { AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(95)).Hold(Duration.FromMinutes(20)) };
        Assert.Contains("knows nothing of hops after flame-out",
            Assert.Single(BitternessEstimate.Of(late, [HopCharge.Whirlpool(Cones, Mass.FromGrams(50))]).Warnings),
            StringComparison.Ordinal);
        Assert.Empty(BitternessEstimate.Of(late, [HopCharge.Whirlpool(Cones, Mass.FromGrams(50))], BitternessModels.Kinetics).Warnings);
    }

    private static string Refusal(HopCharge charge) =>
        Assert.ThrowsAny<ArgumentException>(() => BitternessEstimate.Of(Kettle, [charge])).Message;
}
