namespace SplitBatch.Numbers;

/// <summary>
/// The upper tail P(X &gt;= c) of a binomial, carried from one n to the next and from one c to the next at constant cost.
/// </summary>
/// <remarks>
/// With b = P(X = c - 1) at n: one more trial adds p b to the tail; one more needed success takes P(X = c) away. Rounding is wiped out by
/// recomputing both from scratch every so often, so that the tail stays within about 1e-12 of the exact one.
/// </remarks>
internal struct TailWalk
{
    private const int Refresh = 512;

    private readonly double p, q, odds;
    private double below;

    /// <summary>Starts at no trials and one needed success.</summary>
    public TailWalk(double p)
    {
        this.p = p;
        q = 1 - p;
        odds = p / q;
        below = 1;
        Count = 1;
    }

    /// <summary>Trials so far.</summary>
    public int Trials { get; private set; }

    /// <summary>Successes needed.</summary>
    public int Count { get; private set; }

    /// <summary>The chance of <see cref="Count"/> or more successes in <see cref="Trials"/>.</summary>
    public double Tail { get; private set; }

    /// <summary>The tail computed afresh.</summary>
    public readonly double Exact => ExactBinomial.AtLeast(Count, Trials, p);

    /// <summary>One more trial, the same count.</summary>
    public void Step()
    {
        Tail += p * below;
        Trials++;
        below *= Trials * q / (Trials + 1 - Count);
        if (Trials % Refresh == 0 || below < 1e-250) Restart();
    }

    /// <summary>One more needed success, the same trials; not more than one beyond the trials.</summary>
    public void Raise()
    {
        if (!(below > 1e-250))
        {
            Count++;
            Restart();
            return;
        }

        below *= (Trials - Count + 1) * odds / Count;
        Tail -= below;
        Count++;
        if (Tail < 0) Tail = Exact;
    }

    /// <summary>Whether the tail is no more than the limit; near a tie the exact tail decides.</summary>
    public readonly bool Reaches(double limit) =>
        Math.Abs(Tail - limit) > 1e-9 * limit ? Tail < limit : ExactBinomial.Reaches(Exact, limit);

    private void Restart()
    {
        Tail = Exact;
        below = Math.Exp(ExactBinomial.LogPoint(Count - 1, Trials, p, q));
    }
}
