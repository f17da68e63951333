using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class ModelComparisonTests
{
    private static readonly HopCharge[] Charges = [HopCharge.Boil(HopLot.Cones("cones", 5), Mass.FromGrams(60), 60)];

    [Fact]
    public void Rows_hold_what_each_model_says_alone_and_against_the_first()
    {
        var kettle = Kettle.Metric(20, 1.050);
        var comparison = ModelComparison.Of(kettle, Charges);
        Assert.Equal(["Tinseth", "Rager", "Garetz", "Kinetics"], comparison.Rows.Select(row => row.Model));
        foreach (var (row, model) in comparison.Rows.Zip(BitternessModels.All))
        {
            Assert.Equal(BitternessEstimate.Of(kettle, Charges, model).Value.Value, row.Bitterness, 1e-9);
            Assert.Equal(row.Bitterness / comparison.Rows[0].Bitterness, row.AgainstFirst, 1e-12);
        }

        Assert.StartsWith("Tinseth 34.6, Rager 46.2, Garetz 28.5, Kinetics 43.8 IBU: from 28.5 to 46.2", comparison.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Effects_tell_why_they_differ()
    {
        var strong = ModelComparison.Of(Kettle.Metric(20, 1.080), Charges).Rows.ToDictionary(row => row.Model);
        Assert.Equal(Math.Pow(0.000125, 0.030) - 1, strong["Tinseth"].GravityEffect, 1e-9);
        Assert.Equal(1 / 1.15 - 1, strong["Rager"].GravityEffect, 1e-9);
        Assert.Equal(0, strong["Kinetics"].GravityEffect, 1e-12);

        var high = ModelComparison.Of(Kettle.Metric(20, 1.050, altitudeMeters: 1609), Charges).Rows.ToDictionary(row => row.Model);
        Assert.Equal(0, high["Tinseth"].AltitudeEffect);
        Assert.InRange(high["Garetz"].AltitudeEffect, -0.2, -0.1);
        Assert.InRange(high["Kinetics"].AltitudeEffect, -0.35, -0.2);

        var stand = TemperatureProfile.From(Temperature.FromDegreesCelsius(100)).Hold(Duration.FromMinutes(20));
        var stood = ModelComparison.Of(Kettle.Metric(20, 1.050) with { AfterBoil = stand }, Charges).Rows;
        Assert.All(stood, row => Assert.True(row.StandEffect > 0));
        var late = ModelComparison.Of(Kettle.Metric(20, 1.050) with { AfterBoil = stand },
            [HopCharge.Whirlpool(HopLot.Cones("cones", 5), Mass.FromGrams(60))]).Rows;
        Assert.All(late, row => Assert.Null(row.StandEffect));
    }

    [Fact]
    public void Curves_pass_through_the_estimates_they_are_drawn_for()
    {
        var kettle = Kettle.Metric(20, 1.050);
        var curves = ModelComparison.Curves(kettle, stepMinutes: 15);
        Assert.Equal(4 * 5, curves.Length);
        Assert.Equal(Tinseth.Utilisation(1.050, 45), curves.Single(p => p.Model == "Tinseth" && p.Minutes == 45).Utilisation, 1e-12);
        Assert.All(curves, p => Assert.InRange(p.Utilisation, 0, 0.4));
    }

    [Fact]
    public void Wort_outside_a_models_range_is_marked()
    {
        var rows = ModelComparison.Of(Kettle.Metric(20, 1.125), Charges).Rows.ToDictionary(row => row.Model);
        Assert.True(rows["Tinseth"].InRange);
        Assert.False(rows["Rager"].InRange);
    }
}
