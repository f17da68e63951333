using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Simulation;
using UnitsNet;

namespace SplitBatch.Benchmarks;

/// <summary>The pieces of work that are timed, each the same as its peer's script does.</summary>
public static class Work
{
    private static readonly double[] Alphas = [0.2, 0.1, 0.05, 0.01, 0.001], Powers = [0.8, 0.9, 0.95, 0.99], Shares = [0.1, 0.2,
        0.3, 0.4, 0.5];

    private static readonly ChargeMatch Doses = ChargeMatch.AsGiven(
        Kettle.Metric(20, 1.050, 60, evaporationLitersPerHour: 3),
        [HopCharge.Boil(HopLot.Cones("cones", 6.8), Mass.FromGrams(41), 60)],
        [HopCharge.Boil(HopLot.Pellets("pellets", 8.3), Mass.FromGrams(31), 60)]);

    /// <summary>Tasters needed by the triangle test: 5 alphas, 4 powers, 5 shares, every n to a largest.</summary>
    public static int TastersTable(int largest = 2000) =>
        SplitBatch.Panel.Planning.TastersTable.Of(Protocol.Triangle, Alphas, Powers, Shares, largest).Cells.Count;

    /// <summary>The most tasters that any cell of the table needs for one share of discriminators.</summary>
    public static int MostTasters(double discriminators) =>
        SplitBatch.Panel.Planning.TastersTable.Of(Protocol.Triangle, Alphas, Powers, [discriminators], 1_000_000).Cells
            .Max(cell => cell.Always!.Value);

    /// <summary>Simulated triangles at d-prime 1 by the perceptual model: three normal draws each.</summary>
    public static long Triangles(long tastings = 10_000_000, int? threads = 1) =>
        Simulate.Tastings(Protocol.Triangle, 1, tastings, seed: 1, threads).Correct;

    /// <summary>Draws of two doses with all their errors, and their intervals.</summary>
    public static double Doubt(int draws = 1_000_000, int? threads = 1) =>
        DoseUncertainty.Of(Doses, draws: draws, threads: threads).Difference.Width;

    /// <summary>Beta-binomial fits to panels of so many people with eight sets each.</summary>
    public static double Fits(int panels = 20, int people = 30)
    {
        double sum = 0;
        for (int i = 0; i < panels; i++) sum += BetaBinomialFit.Of(Counts(i, people)).Model.Overdispersion;
        return sum;
    }

    /// <summary>
    /// Counts that the peer's script makes by the same rule: whole numbers from a small recurrence, so that both fit the same data.
    /// </summary>
    public static IReadOnlyList<TasterCount> Counts(int number, int people)
    {
        var counts = new TasterCount[people];
        for (int i = 0; i < people; i++) counts[i] = new TasterCount(8, ((i * 7) + (number * 3) + (i * i % 5)) % 9);
        return counts;
    }
}
