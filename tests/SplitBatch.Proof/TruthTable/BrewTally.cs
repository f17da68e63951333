using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Lab;
using UnitsNet;

namespace SplitBatch.Proof.TruthTable;

/// <summary>
/// How often the intervals of dose, lab and estimate check hold the truth, and how often the lab's difference is claimed falsely.
/// </summary>
public sealed class BrewTally
{
    private const int DrawsForEach = 4000;

    private static readonly Kettle Kettle = Kettle.Metric(Nature.Liters, Nature.Gravity, Nature.Minutes);

    private static readonly LabPrecision Stated = new(
        Precision.CoefficientOfVariation(Nature.RepeatabilityPercent, PrecisionCondition.Repeatability),
        Precision.CoefficientOfVariation(Nature.ReproducibilityPercent, PrecisionCondition.Reproducibility));

    private readonly Dictionary<string, int> bad = Promises.ToDictionary(promise => promise, _ => 0);

    /// <summary>What is promised, each at 95 in 100.</summary>
    public static IReadOnlyList<string> Promises { get; } =
    [
        "dose interval of half A holds its true bitterness",
        "dose interval of half B holds its true bitterness",
        "dose interval of the difference holds the true difference",
        "lab interval holds the difference that the lab's method would read without scatter",
        "of two bottles of one beer, the lab comparison claims no difference",
        "interval of half A's lab value over its estimate holds one, which is true here: nature follows the formula",
        "interval of B's ratio over A's holds one, which is true here as well",
    ];

    public int Trials { get; private set; }

    /// <summary>How often a promise was broken.</summary>
    public int Bad(string promise) => bad[promise];

    /// <summary>Brews and measures so many split batches.</summary>
    public static BrewTally Run(int trials, int seed)
    {
        var tally = new BrewTally();
        for (int i = 0; i < trials; i++) tally.Brew(unchecked((seed * 1_000_003) + i));
        return tally;
    }

    private void Brew(int seed)
    {
        var nature = new Nature(seed);
        var lotA = HopLot.Cones("cones", nature.Assay(Nature.AlphaA)) with
        {
            AlphaUncertainty = AssayUncertainty.Standard(Nature.AssayPoints),
        };
        var lotB = HopLot.Pellets("pellets", nature.Assay(Nature.AlphaB)) with
        {
            AlphaUncertainty = AssayUncertainty.Standard(Nature.AssayPoints),
        };
        var doses = ChargeMatch.Solve(Kettle, target: 32, lotA, lotB, scale: Mass.FromGrams(Nature.ScaleStep));
        var sure = DoseUncertainty.Of(doses, seed: seed, draws: DrawsForEach, threads: 1);
        var (a, b) = nature.Brew(doses.A.HopMass.Grams, doses.B.HopMass.Grams);
        Expect(0, sure.A.Contains(a));
        Expect(1, sure.B.Contains(b));
        Expect(2, sure.Difference.Contains(b - a));

        double bias = nature.LaboratoryBias();
        var lab = LabComparison.Compare(Stated, new Replicates("A", nature.Measure(a * bias)),
            new Replicates("B", nature.Measure(b * bias)));
        Expect(3, lab.Interval!.Value.Contains((a - b) * bias));
        var one = LabComparison.Compare(Stated, new Replicates("first bottle", nature.Measure(a * bias)),
            new Replicates("second bottle", nature.Measure(a * bias)));
        Expect(4, one.Judgement == Judgement.Within);
        var check = EstimateCheck.Of(doses, sure, lab);
        Expect(5, check.RatioA!.Value.Contains(1));
        Expect(6, check.EquallyFar == true);
        Trials++;

        void Expect(int promise, bool kept)
        {
            if (!kept) bad[Promises[promise]]++;
        }
    }
}
