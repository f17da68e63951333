using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Is there a difference? The exact one- or two-sided binomial test of a count against guessing, and what the count says about its size.
/// </summary>
/// <remarks>
/// Built by <see cref="Of"/>. A result that is not significant is never evidence of no difference: see <see cref="SimilarityTest"/>.
/// </remarks>
public sealed record DifferenceTest : CountedAnswers
{
    private DifferenceTest()
    {
    }

    /// <summary>The chance, fixed beforehand, of showing a difference that is not there.</summary>
    public required double Alpha { get; init; }

    /// <summary>The level of the intervals.</summary>
    public required double Level { get; init; }

    /// <summary>Whether tasters are judged by how each leans and not by the pooled count: repeats of a two-sided protocol.</summary>
    public bool ByLeanings => Repeats is not null && Protocol.Sides == 2;

    /// <summary>
    /// The chance of a count as large as this by guessing alone, both sides taken together for a two-sided protocol; with repeats of a
    /// two-sided protocol that of so large a leaning of the tasters.
    /// </summary>
    public double PValue => ByLeanings
        ? Repeats!.PValue
        : Math.Min(1, Protocol.Sides * ExactBinomial.AtLeast(Count, Tasters, Protocol.Chance));

    /// <summary>
    /// The smallest count that shows a difference; null where the panel is so small that none does, or where no count decides
    /// (<see cref="ByLeanings"/>).
    /// </summary>
    public int? CriticalCount => ByLeanings ? null : Power.CriticalCount(Protocol, Tasters, Alpha);

    /// <summary>
    /// The chance of showing a difference by guessing alone: at most <see cref="Alpha"/>, usually less, because counts are whole.
    /// </summary>
    public double TrueAlpha => Power.Of(Protocol, Tasters, Alpha, 0);

    /// <summary>Whether the count reaches the critical count, or the leaning of the tasters its level.</summary>
    public bool DifferenceShown => ByLeanings ? ExactBinomial.Reaches(PValue, Alpha) : Count >= CriticalCount;

    /// <summary>Right answers per set.</summary>
    public double CorrectShare => (double)Count / Tasters;

    /// <summary>Exact interval of the share of right answers.</summary>
    public Interval ClopperPearson => ShareIntervals.ClopperPearson(Count, Tasters, Level);

    /// <summary>Score interval of the share of right answers.</summary>
    public Interval Wilson => ShareIntervals.Wilson(Count, Tasters, Level);

    /// <summary>Jeffreys' interval of the share of right answers.</summary>
    public Interval Jeffreys => ShareIntervals.Jeffreys(Count, Tasters, Level);

    /// <summary>Estimated share of discriminators: those who truly tell the beers apart, not below 0.</summary>
    public double Discriminators => Protocol.Discriminators(CorrectShare);

    /// <summary>
    /// Exact interval of the share of discriminators, from <see cref="ClopperPearson"/>, cut at 0; with repeats that of the spread of
    /// tasters, which is wider.
    /// </summary>
    public Interval DiscriminatorsInterval => Repeats?.DiscriminatorsInterval(Level) ?? ClopperPearson.Select(Protocol.Discriminators);

    /// <summary>
    /// The estimated distance between the beers with its exact interval; with repeats that of the mean share, with the interval of the
    /// spread of tasters.
    /// </summary>
    public DPrimeEstimate DPrime => Repeats is null
        ? DPrimeEstimate.Of(Protocol, Tasters, Count, Level)
        : DPrimeEstimate.Of(Protocol, Tasters, Count, Level) with
        {
            StandardError = null,
            Interval = DiscriminatorsInterval.Select(s => Protocol.DPrime(Protocol.CorrectFromDiscriminators(s))),
            LikelihoodInterval = null,
        };

    /// <summary>Tests a count of right answers against guessing.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1; one set per taster.</param>
    /// <param name="correct">Right answers, from 0 to <paramref name="tasters"/>; for a two-sided protocol, answers for the one
    /// beer.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1; fix it before serving.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">No sets, more right answers than sets, or a level that is not a share.</exception>
    /// <exception cref="InvalidOperationException">The protocol has no known guessing chance.</exception>
    /// <example><code>DifferenceTest.Of(Protocol.Triangle, tasters: 24, correct: 13)</code></example>
    public static DifferenceTest Of(Protocol protocol, int tasters, int correct, double alpha = 0.05, double level = 0.95)
    {
        return new()
        {
            Protocol = Checked(protocol, tasters, correct),
            Tasters = tasters,
            Correct = correct,
            Alpha = Guard.OpenShare(alpha),
            Level = Guard.OpenShare(level),
        };
    }

    /// <summary>For example <c>11 right of 20 (triangle): a difference is shown at 5 % (p = 0.038; 11 needed).</c></summary>
    public override string ToString()
    {
        var needed = ByLeanings ? "judged by how each taster leans"
            : CriticalCount is { } critical ? $"{critical} needed" : "no count of so few could show one";
        var outcome = $"{Printed.PValue(PValue)}; {needed}";
        if (DifferenceShown) return $"{Opening}: a difference is shown at {Printed.ChosenPercent(Alpha)} ({outcome}).";
        var allowed = Repeats?.StillAllowed(1 - Level) ?? CountLimit.Discriminators(Protocol, Tasters, Correct, 1 - Level);
        return $"{Opening}: no difference shown at {Printed.ChosenPercent(Alpha)} ({outcome}). "
            + $"That does not mean the same: it still allows up to {Printed.Percent(allowed)} discriminators "
            + $"({Printed.ChosenPercent(Level)} confidence).";
    }
}
