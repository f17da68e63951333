using SplitBatch.Brewing;
using SplitBatch.Numbers;
using UnitsNet;
using static SplitBatch.Bitterness.BitternessReference;

namespace SplitBatch.Bitterness;

public class ReferenceRunsTests
{
    /// <summary>tests/reference/bitterness/dose_monte_carlo.py draws the same case with NumPy and its own random numbers.</summary>
    [Fact]
    public void The_full_case_agrees_with_NumPy()
    {
        var kettle = Kettle.Metric(liters: 20, gravity: 1.050, evaporationLitersPerHour: 3);
        var match = ChargeMatch.AsGiven(
            kettle,
            [HopCharge.Boil(HopLot.Cones("cones", 6.8), Mass.FromGrams(41), 60)],
            [HopCharge.Boil(HopLot.Pellets("pellets", 8.3), Mass.FromGrams(31), 60)]);
        var ours = DoseUncertainty.Of(match, seed: 2026, criticalDifference: 3.5, tasteMargin: 5);
        var rows = Rows("dose_monte_carlo.csv").ToDictionary(row => row[0], row => row);
        void Compare(string name, double mean, double deviation, Interval interval)
        {
            // A million draws in both: means agree within a few thousandths of a deviation, 2.5 % points within about one hundredth.
            var sd = Number(rows[name][2]);
            Assert.Equal(Number(rows[name][1]), mean, 0.006 * sd);
            Assert.Equal(sd, deviation, 0.004 * sd);
            Assert.Equal(Number(rows[name][3]), interval.Low, 0.015 * sd);
            Assert.Equal(Number(rows[name][4]), interval.High, 0.015 * sd);
        }

        Compare("A", ours.Mean.A, ours.Deviation.A, ours.A);
        Compare("B", ours.Mean.B, ours.Deviation.B, ours.B);
        Compare("B-A", ours.Mean.Difference, ours.Deviation.Difference, ours.Difference);
        Assert.Equal(Number(rows["beyond 3.5"][1]), ours.ChanceBeyondCriticalDifference!.Value, 0.003);
        Assert.Equal(Number(rows["beyond 5"][1]), ours.ChanceBeyondTasteMargin!.Value, 0.003);
    }

    private static readonly Dictionary<string, double[]> Ratios = new()
    {
        ["one"] = [0.6],
        ["four"] = [0.83, 0.79, 0.62, 0.66],
        ["near"] = [0.95, 1.05, 0.88],
        ["twelve"] = [0.71, 0.66, 0.80, 0.74, 0.58, 0.69, 0.77, 0.72, 0.63, 0.70, 0.75, 0.68],
    };

    /// <summary>tests/reference/bitterness/calibration.R integrates the same model over a grid, without the closed form.</summary>
    [Fact]
    public void House_factor_and_prediction_agree_with_integration_over_a_grid_in_R()
    {
        foreach (var row in Rows("calibration.csv"))
        {
            var ratios = Ratios[row[0]];
            var house = HouseCalibration.Fit(ratios.Select((ratio, i) => new CalibrationPair($"{i}", 100, 100 * ratio)));
            var next = house.Correct(1).Interval;
            double[] ours = [house.Factor, house.FactorInterval.Low, house.FactorInterval.High, next.Low, next.High];
            for (var i = 0; i < ours.Length; i++) Assert.Equal(Number(row[i + 2]), ours[i], 0.003 * ours[i]);
        }
    }
}
