using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>The chance that a panel shows what it is meant to show, by the exact binomial, and the panel sizes that follow.</summary>
public static class Power
{
    /// <summary>The largest panel that a search will consider.</summary>
    public const int LargestPanel = 10_000_000;

    /// <summary>
    /// The chance of a false alarm over a count far below chance, unless another was declared: one in a hundred panels that guess.
    /// </summary>
    public const double AlarmLevel = 0.01;

    /// <summary>The number of right answers from which a difference is shown; null where no count would do.</summary>
    /// <param name="protocol">A protocol with a known guessing chance. For a two-sided one the count is of the more frequent
    /// answer.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int? CriticalCount(Protocol protocol, int tasters, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.Positive(tasters);
        Guard.OpenShare(alpha);
        var count = ExactBinomial.CriticalCount(tasters, protocol.Chance, alpha / protocol.Sides);
        return count > tasters ? null : count;
    }

    /// <summary>
    /// The largest number of right answers at which a share of discriminators of <paramref name="margin"/> or more is ruled out; -1 where
    /// no count would do.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance. For a two-sided one the count is of the more frequent
    /// answer.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int SimilarityCount(Protocol protocol, int tasters, double margin, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.Positive(tasters);
        Guard.OpenShare(margin);
        var count = ExactBinomial.LargestCount(tasters, protocol.CorrectFromDiscriminators(margin), beta);
        return protocol.Sides == 2 && 2 * count < tasters ? -1 : count;
    }

    /// <summary>The chance that a panel shows a difference.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="discriminators">The true share of discriminators in [0, 1]; at 0 the result is the true size of the test.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double Of(Protocol protocol, int tasters, double alpha, double discriminators)
    {
        if (CriticalCount(protocol, tasters, alpha) is not { } critical) return 0;
        var share = protocol.CorrectFromDiscriminators(discriminators);
        var one = ExactBinomial.AtLeast(critical, tasters, share);
        return protocol.Sides == 1 ? one : one + ExactBinomial.AtLeast(critical, tasters, 1 - share);
    }

    /// <summary>
    /// The chance that a panel rules out the margin, from both sides where the task has a direction; 0 where it is too small to.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="beta">The chance of ruling the margin out although it is true, above 0 and below 1.</param>
    /// <param name="margin">The share of discriminators to be ruled out, above 0 and below 1.</param>
    /// <param name="discriminators">The true share of discriminators, below the margin for a useful answer.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double OfSimilarity(Protocol protocol, int tasters, double beta, double margin, double discriminators = 0)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        if (MarginCounts.RuledOut(protocol, tasters, DeclaredMargin.OfShare(margin), beta) is not { } range) return 0;
        var share = protocol.CorrectFromDiscriminators(discriminators);
        return ExactBinomial.AtMost(range.Highest, tasters, share) - ExactBinomial.AtMost(range.Lowest - 1, tasters, share);
    }

    /// <summary>The number of tasters needed to show a difference.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="power">The chance of showing the difference that is there, above 0 and below 1.</param>
    /// <param name="discriminators">The true share of discriminators, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or the panel would be larger than
    /// <see cref="LargestPanel"/>.</exception>
    /// <example><code>Power.TastersNeeded(Protocol.Triangle, alpha: 0.05, power: 0.80, discriminators: 0.30)</code></example>
    public static TastersNeeded TastersNeeded(Protocol protocol, double alpha, double power, double discriminators)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(alpha);
        Guard.OpenShare(power);
        Guard.Share(Guard.Positive(discriminators), nameof(discriminators));
        var (first, always) = Sizing.Search(new(
            protocol.Chance, protocol.CorrectFromDiscriminators(discriminators), alpha / protocol.Sides, power,
            protocol.Sides == 2 ? Sizing.Second.Either : Sizing.Second.None));
        return new(protocol, Aim.Difference, alpha, power, discriminators, first, always);
    }

    /// <summary>The number of tasters needed to show a difference of a given d-prime, so that protocols can be compared.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="power">The chance of showing the difference that is there, above 0 and below 1.</param>
    /// <param name="dPrime">The true distance between the beers in units of the noise of one tasting, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or the panel would be larger than
    /// <see cref="LargestPanel"/>.</exception>
    public static TastersNeeded TastersNeededForDPrime(Protocol protocol, double alpha, double power, double dPrime)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return TastersNeeded(protocol, alpha, power, protocol.Discriminators(protocol.CorrectShare(Guard.Positive(dPrime))));
    }

    /// <summary>The number of tasters needed to rule out a margin when in truth there are no discriminators.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="beta">The chance of ruling the margin out although it is true, above 0 and below 1.</param>
    /// <param name="power">The chance of ruling it out when nobody can tell the beers apart, above 0 and below 1.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or the panel would be larger than
    /// <see cref="LargestPanel"/>.</exception>
    public static TastersNeeded TastersNeededForSimilarity(Protocol protocol, double beta, double power, double margin)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(beta);
        Guard.OpenShare(power);
        Guard.OpenShare(margin);
        // Few right answers are many wrong ones: the same walk, counted from the other end. A task with a direction is walked from both.
        var problem = new Sizing.Problem(
            1 - protocol.CorrectFromDiscriminators(margin), 1 - protocol.Chance, beta, power,
            protocol.Sides == 2 || protocol.IsDirected ? Sizing.Second.Both : Sizing.Second.None);
        if (protocol.IsDirected) problem = problem with { OtherNull = protocol.Chance * (1 - margin), OtherTrue = protocol.Chance };
        var (first, always) = Sizing.Search(problem);
        return new(protocol, Aim.Similarity, beta, power, margin, first, always);
    }

    /// <summary>
    /// The number of tasters that settles the matter whatever the count: with it, every count shows a difference, rules the margin out,
    /// or is so low that it raises an alarm.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <remarks>No gap is left between the two counts exactly when the power against the margin is at least 1 - beta.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or the panel would be larger than
    /// <see cref="LargestPanel"/>.</exception>
    /// <example><code>Power.TastersThatSettle(Protocol.Triangle, alpha: 0.05, margin: 0.30, beta: 0.10)</code></example>
    public static TastersNeeded TastersThatSettle(Protocol protocol, double alpha, double margin, double beta = 0.05) =>
        TastersThatSettle(protocol, alpha, DeclaredMargin.OfShare(Guard.OpenShare(margin)), beta);

    /// <summary>
    /// The same for a margin as it was declared: a d-prime the other way round is another share than that of the expected way.
    /// </summary>
    internal static TastersNeeded TastersThatSettle(Protocol protocol, double alpha, DeclaredMargin margin, double beta)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(alpha);
        Guard.OpenShare(beta);
        var problem = new Sizing.Problem(protocol.Chance, margin.CorrectIn(protocol), alpha / protocol.Sides, 1 - beta);
        if (protocol.IsDirected) // Low counts leave no gap where those too many for an alarm rule the margin out the other way round.
        {
            problem = problem with
            {
                Other = Sizing.Second.Each, OtherError = AlarmLevel,
                OtherNull = 1 - protocol.Chance, OtherTrue = 1 - margin.CorrectReversedIn(protocol),
            };
        }

        var (first, always) = Sizing.Search(problem);
        return new(protocol, Aim.Either, alpha, 1 - beta, margin.ShareIn(protocol), first, always);
    }
}
