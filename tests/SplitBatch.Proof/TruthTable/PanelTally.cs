using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Proof.TruthTable;

/// <summary>What the simulated trials of one cell said, and how often it was false.</summary>
public sealed class PanelTally
{
    private readonly int[] answers = new int[Enum.GetValues<PanelAnswer>().Length];
    private int falseClaims, falseAndPlain, limits, limitCovers, sharesCover, shares, distanceCovers, likelyCovers;
    private long counted;

    /// <summary>
    /// What intervals hold the truth, by sets and right answers: they follow from the count alone, and are worked out once for each.
    /// </summary>
    private readonly Dictionary<(int Sets, int Right), (bool Share, bool Distance, bool Likely)> holds = [];

    private readonly double distance;

    internal PanelTally(PanelCell cell)
    {
        Cell = cell;
        distance = cell.Protocol.DPrime(cell.Protocol.CorrectFromDiscriminators(cell.Truth.Discriminators));
    }

    public PanelCell Cell { get; }

    public int Trials { get; private set; }

    /// <summary>How often an answer was given, as a share of trials.</summary>
    public double Share(PanelAnswer answer) => (double)answers[(int)answer] / Trials;

    /// <summary>How often the verdict claimed what is not so.</summary>
    public double FalseShare => (double)falseClaims / Trials;

    public int FalseClaims => falseClaims;

    /// <summary>How often it did so with nothing beside the claim that limits it.</summary>
    public double FalseAndPlainShare => (double)falseAndPlain / Trials;

    /// <summary>
    /// How often the limit "still allowed" lay at or above the truth; it should in 95 of 100. NaN where none is given for the practice.
    /// </summary>
    public double LimitCovers => limits == 0 ? double.NaN : (double)limitCovers / limits;

    public int LimitMisses => limits - limitCovers;

    /// <summary>
    /// How often the 95 % interval of the share of discriminators held the truth; NaN where none is given for the practice.
    /// </summary>
    public double SharesCover => shares == 0 ? double.NaN : (double)sharesCover / shares;

    public int SharesMiss => shares - sharesCover;

    /// <summary>How often the 95 % interval of d-prime held the truth; NaN where none is given for the practice.</summary>
    public double DistanceCovers => shares == 0 ? double.NaN : (double)distanceCovers / shares;

    public int DistancesMiss => shares - distanceCovers;

    /// <summary>
    /// How often the 95 % likelihood interval of d-prime did, which promises it about, not at least; NaN where none is given.
    /// </summary>
    public double LikelyCovers => shares == 0 ? double.NaN : (double)likelyCovers / shares;

    /// <summary>Sets that were counted, on average.</summary>
    public double MeanSets => (double)counted / Trials;

    internal void Add(PanelOutcome outcome)
    {
        var reading = outcome.Reading;
        Trials++;
        counted += outcome.Counted;
        answers[(int)outcome.Answer]++;
        bool isFalse = IsFalse(outcome.Answer), isPlain = !outcome.IsQualified && outcome.KeptToPlan;
        if (isFalse) falseClaims++;
        if (isFalse && isPlain) falseAndPlain++;
        // An early stop makes the count no sample of fixed size, and the verdict gives no interval.
        if (Cell.Practice == Practice.Sequential) return;
        limits++;
        if (reading.Similarity.StillAllowed >= Cell.Truth.Discriminators - 1e-12) limitCovers++;
        if (Cell.Practice == Practice.RepeatsAsRepeats) return; // The verdict gives no interval of single tastings.
        shares++;
        var count = (reading.Difference.Tasters, reading.Difference.Correct);
        if (!holds.TryGetValue(count, out var held)) holds[count] = held = Holding(reading.Difference);
        if (held.Share) sharesCover++;
        if (held.Distance) distanceCovers++;
        if (held.Likely) likelyCovers++;
    }

    private (bool Share, bool Distance, bool Likely) Holding(DifferenceTest test) =>
        (Holds(test.DiscriminatorsInterval, Cell.Truth.Discriminators), Holds(test.DPrime.Interval, distance),
            test.DPrime.LikelihoodInterval is { } likely && Holds(likely, distance));

    private bool IsFalse(PanelAnswer answer) => answer switch
    {
        PanelAnswer.DifferenceShown => Cell.Truth.NoDifference,
        PanelAnswer.DifferenceWithinMargin => Cell.Truth.NoDifference || Cell.Truth.Matters,
        PanelAnswer.MarginRuledOut => Cell.Truth.Matters,
        _ => false,
    };

    private static bool Holds(Interval interval, double truth) => interval.Low <= truth + 1e-12 && interval.High >= truth - 1e-12;
}
