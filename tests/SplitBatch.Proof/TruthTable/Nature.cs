using SplitBatch.Numbers;

namespace SplitBatch.Proof.TruthTable;

/// <summary>
/// What a brewer cannot see: what the lots truly hold, what truly happened in two kettles, and how the lab's readings scatter. Written out
/// from Tinseth's printed formula and plain normal and even draws, so that it shares no arithmetic with the library's own.
/// </summary>
internal sealed class Nature(int seed)
{
    public const double AlphaA = 0.054, AlphaB = 0.117, AssayPoints = 0.18;
    public const double Liters = 20, Gravity = 1.048, Minutes = 60, ScaleStep = 0.5;
    public const double PelletFactor = 1.07, PelletDoubt = 0.06;
    public const double RepeatabilityPercent = 2, BiasPercent = 5;

    /// <summary>What labs differ by: their scatter and their bias together.</summary>
    public static double ReproducibilityPercent { get; } =
        Math.Sqrt((RepeatabilityPercent * RepeatabilityPercent) + (BiasPercent * BiasPercent));

    private SeededRandom random = new(seed, stream: 77);

    /// <summary>What an assay of a lot reads, in percent of its mass.</summary>
    public double Assay(double alpha) => (100 * alpha) + (AssayPoints * Normal());

    /// <summary>
    /// The bitterness that two charges truly give, in IBU: half A of cones, half B of pellets, out of one brewery on one day.
    /// </summary>
    public (double A, double B) Brew(double gramsA, double gramsB)
    {
        double calibration = Near(1, 0.002), gauge = Near(1, 0.015), gravity = Near(Gravity, 0.001), formula = Near(1, 0.20),
            pellet = PelletFactor * Near(1, PelletDoubt);
        return (Half(gramsA, AlphaA), Half(gramsB, AlphaB) * pellet);

        double Half(double grams, double alpha)
        {
            double weighed = (grams + (ScaleStep * (random.NextShare() - 0.5))) * calibration;
            double liters = Liters * gauge * Near(1, 0.015), minutes = Minutes + (0.5 * Normal());
            double utilisation = 1.65 * Math.Pow(0.000125, gravity - 1) * (1 - Math.Exp(-0.04 * minutes)) / 4.15;
            return 1000 * weighed * alpha * utilisation / liters * formula * Near(1, 0.04);
        }
    }

    /// <summary>A lab's own bias, as a factor on all it reads.</summary>
    public double LaboratoryBias() => Near(1, BiasPercent / 100);

    /// <summary>Two readings of one beer by one lab.</summary>
    public double[] Measure(double bitterness) =>
        [Near(bitterness, bitterness * RepeatabilityPercent / 100), Near(bitterness, bitterness * RepeatabilityPercent / 100)];

    private double Near(double centre, double sd) => centre + (sd * Normal());

    /// <summary>A standard normal number by Box and Muller.</summary>
    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextShare())) * Math.Cos(2 * Math.PI * random.NextShare());
}
