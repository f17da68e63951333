using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Evidence;
using SplitBatch.Lab;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Panel.Simulation;
using SplitBatch.Trials.Reading;
using UnitsNet;

namespace SplitBatch.Proof.TruthTable;

/// <summary>What tasters of a whole trial can tell the halves by.</summary>
/// <param name="Name">In words.</param>
/// <param name="Hops">The distance that the hops themselves make, as d-prime.</param>
/// <param name="TrueAlphaShare">What half B's lot still holds of its assayed alpha acid: 1 where the assay is fresh.</param>
public sealed record WholeCell(string Name, double Hops, double TrueAlphaShare)
{
    /// <summary>People at the panel; each tastes one triangle.</summary>
    public const int Tasters = 60;

    /// <summary>
    /// The difference in bitterness that makes a distance of one. Made up for this table: no figure with a source is known.
    /// </summary>
    public const double BitternessOfOneDPrime = 4;

    /// <summary>Hops alike or not, assays fresh or old.</summary>
    public static IReadOnlyList<WholeCell> All { get; } =
        [new("hops taste alike, assays fresh", 0, 1), new("hops differ, assays fresh", 1.8, 1),
            new("hops taste alike, B's assay old", 0, 0.7), new("hops differ, B's assay old", 1.8, 0.7)];

    /// <summary>
    /// How far apart the halves taste: hops and bitterness are two independent senses of one taster, whose distances add as squares.
    /// </summary>
    public double Distance(double bitterness) =>
        Math.Sqrt((Hops * Hops) + (bitterness * bitterness / (BitternessOfOneDPrime * BitternessOfOneDPrime)));
}

/// <summary>Whole trials from the scale to the verdict: doses, kettles, lab, panel, and what may be said.</summary>
public sealed class WholeTrial
{
    private static readonly Kettle Kettle = Kettle.Metric(Nature.Liters, Nature.Gravity, Nature.Minutes);

    private static readonly LabPrecision Stated =
        new(Precision.CoefficientOfVariation(Nature.RepeatabilityPercent, PrecisionCondition.Repeatability));

    private WholeTrial(WholeCell cell) => Cell = cell;

    public WholeCell Cell { get; }

    public int Trials { get; private set; }

    /// <summary>Trials in which the lab found the halves to differ.</summary>
    public int LabDiffers { get; private set; }

    /// <summary>Trials in which a difference in taste was shown.</summary>
    public int Shown { get; private set; }

    /// <summary>Of those, how many verdicts said that it may be bitterness.</summary>
    public int ShownAndBitternessNamed { get; private set; }

    /// <summary>Trials in which a difference was shown that is bitterness alone, and the verdict did not say that it may be.</summary>
    public int Misled { get; private set; }

    /// <summary>Runs so many trials of every cell, or of those given.</summary>
    public static IReadOnlyList<WholeTrial> Run(int trials, int seed, IEnumerable<WholeCell>? cells = null) =>
        [.. (cells ?? WholeCell.All).Select((cell, i) =>
        {
            var tally = new WholeTrial(cell);
            for (int trial = 0; trial < trials; trial++) tally.Add(unchecked((seed * 1_000_003) + ((i + 500) * 20_011) + trial));
            return tally;
        })];

    private void Add(int seed)
    {
        var nature = new Nature(seed);
        var lotA = HopLot.Cones("cones", nature.Assay(Nature.AlphaA));
        var lotB = HopLot.Pellets("pellets", nature.Assay(Nature.AlphaB));
        var doses = ChargeMatch.Solve(Kettle, target: 32, lotA, lotB, scale: Mass.FromGrams(Nature.ScaleStep));
        var (a, b) = nature.Brew(doses.A.HopMass.Grams, doses.B.HopMass.Grams * Cell.TrueAlphaShare);
        double bias = nature.LaboratoryBias();
        var lab = LabComparison.Compare(Stated, new Replicates("A", nature.Measure(a * bias)),
            new Replicates("B", nature.Measure(b * bias)));

        var plan = new PanelPlan(Protocol.Triangle, WholeCell.Tasters)
        {
            Margin = Truth.Margin,
            Seed = seed,
            Declared = new DateOnly(2026, 3, 1),
        };
        var serving = ServingPlan.Balanced(plan.Protocol, plan.Tasters, seed);
        var ballots = serving.Ballots(new SimulatedTasters(DPrimeSpread.Same(Cell.Distance(b - a))), seed);
        var verdict = Verdict.Of(new TrialEvidence
        {
            Variable = "hop lot", NameA = "cones", NameB = "pellets", Doses = doses, Bitterness = lab,
            Panels = [new PanelRecord(plan, serving, ballots).Finding],
        });

        bool shown = verdict.Answer is PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin;
        bool named = verdict.Limitations.Any(limit => limit.Id == "limit.bitterness");
        Trials++;
        if (lab.Judgement == Judgement.Exceeds) LabDiffers++;
        if (shown) Shown++;
        if (shown && named) ShownAndBitternessNamed++;
        if (shown && !named && Cell.Hops == 0) Misled++;
    }
}
