using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using static System.FormattableString;

namespace SplitBatch.Panel.Simulation;

/// <summary>What the tasters of a simulated panel are like; change what differs with <c>with</c>.</summary>
public sealed record SimulatedTasters
{
    private readonly double guessing, fatigue, dropOut, noShow, favouredShare;
    private readonly double firstCupLift;

    /// <summary>Tasters with a stated distribution of d-prime and nothing else in the way.</summary>
    public SimulatedTasters(DPrimeSpread dPrime) => DPrime = dPrime ?? throw new ArgumentNullException(nameof(dPrime));

    /// <summary>People who cannot tell the beers apart.</summary>
    public static SimulatedTasters Guessers { get; } = new(DPrimeSpread.Nobody);

    /// <summary>What they can tell.</summary>
    public DPrimeSpread DPrime { get; init; }

    /// <summary>The share of sets at which a taster does not attend and simply guesses, in [0, 1].</summary>
    public double Guessing { get => guessing; init => guessing = Guard.Share(value, nameof(Guessing)); }

    /// <summary>
    /// How much stronger the first coded cup seems than it is, in units of the noise of one tasting: position bias of the tongue, in
    /// [-10, 10].
    /// </summary>
    public double FirstCupLift { get => firstCupLift; init => firstCupLift = Guard.InRange(value, -10.0, 10.0, nameof(FirstCupLift)); }

    /// <summary>
    /// The share of pure guesses that fall on the first cup (or the word A, or same) whatever it holds: position bias of the hand, in [0,
    /// 1].
    /// </summary>
    public double FavouredShare { get => favouredShare; init => favouredShare = Guard.Share(value, nameof(FavouredShare)); }

    /// <summary>
    /// The share of d-prime lost with each further set, in [0, 1]: 0.1 leaves 0.9 at the second set and 0.81 at the third.
    /// </summary>
    public double Fatigue { get => fatigue; init => fatigue = Guard.Share(value, nameof(Fatigue)); }

    /// <summary>The chance of leaving before each set after the first, in [0, 1].</summary>
    public double DropOut { get => dropOut; init => dropOut = Guard.Share(value, nameof(DropOut)); }

    /// <summary>The chance of never coming, in [0, 1].</summary>
    public double NoShow { get => noShow; init => noShow = Guard.Share(value, nameof(NoShow)); }

    internal bool HasPositionBias => FirstCupLift != 0 || (FavouredShare != 0 && Guessing != 0);

    /// <summary>
    /// The exact share of correct answers that such tasters give on average over all sets served, from the psychometric function.
    /// Drop-outs leave it as it is only without fatigue; position bias is not in it.
    /// </summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="replicates">Sets for each taster, at least 1.</param>
    /// <exception cref="InvalidOperationException">There is position bias, or fatigue together with drop-outs, for which no exact value
    /// is known here.</exception>
    public double ExpectedCorrect(Protocol protocol, int replicates = 1)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.InRange(replicates, 1, Seating.MostReplicates);
        if (HasPositionBias || (Fatigue > 0 && DropOut > 0 && replicates > 1))
            throw new InvalidOperationException(
                "No exact share is known with position bias, or with fatigue and drop-outs together; simulate.");
        double sum = 0;
        for (int k = 0; k < replicates; k++)
        {
            double left = Math.Pow(1 - Fatigue, k);
            sum += DPrime.Mean(d => protocol.CorrectShare(d * left));
        }
        double chance = protocol.CorrectShare(0);
        return (Guessing * chance) + ((1 - Guessing) * sum / replicates);
    }

    /// <summary>For example <c>everyone has d-prime 1; 10 % of the answers are guesses</c>.</summary>
    public override string ToString()
    {
        List<string> parts = [DPrime.ToString()!];
        if (Guessing > 0) parts.Add(Invariant($"{Printed.ChosenPercent(Guessing)} of the answers are guesses"));
        if (FirstCupLift != 0)
            parts.Add(Invariant($"the first cup seems {Printed.Chosen(Math.Abs(FirstCupLift))} ")
                + Invariant($"{(FirstCupLift > 0 ? "stronger" : "weaker")}"));
        if (FavouredShare > 0) parts.Add(Invariant($"{Printed.ChosenPercent(FavouredShare)} of the guesses take the first cup"));
        if (Fatigue > 0) parts.Add(Invariant($"each further set loses {Printed.ChosenPercent(Fatigue)} of d-prime"));
        if (DropOut > 0) parts.Add(Invariant($"{Printed.ChosenPercent(DropOut)} leave before each further set"));
        if (NoShow > 0) parts.Add(Invariant($"{Printed.ChosenPercent(NoShow)} never come"));
        return string.Join("; ", parts);
    }
}

/// <summary>How many of many simulated tastings were right.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="DPrime">The tasters' d-prime.</param>
/// <param name="Tastings">How many tastings.</param>
/// <param name="Correct">How many were right.</param>
/// <param name="Seed">The seed.</param>
public sealed record SimulatedTastings(Protocol Protocol, double DPrime, long Tastings, long Correct, int Seed)
{
    /// <summary>The share that was right.</summary>
    public double CorrectShare => (double)Correct / Tastings;

    /// <summary>The standard error of that share.</summary>
    public double StandardError => Math.Sqrt(CorrectShare * (1 - CorrectShare) / Tastings);

    /// <summary>For example <c>triangle at d-prime 1: 41.8 % of 1,000,000 tastings right (seed 1)</c>.</summary>
    public override string ToString() =>
        Invariant($"{Protocol.Name} at d-prime {Printed.Chosen(DPrime)}: {Printed.Percent(CorrectShare)} of {Printed.Count(Tastings)} ")
            + Invariant($"tastings right (seed {Seed})");
}
