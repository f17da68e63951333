using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>The largest difference that a count still allows, one set for each taster.</summary>
/// <remarks>
/// The one-sided exact upper limit, taken at the count or at what guessing gives on average, whichever is larger. So it never reads 0,
/// and it lies below a margin exactly when <see cref="MarginCounts"/> rules the margin out.
/// <para>Ref. Clopper and Pearson (1934), Biometrika 26, 404. A limit that a lucky low count cannot push below what the experiment can
/// tell: G. Cowan, K. Cranmer, E. Gross and O. Vitells (2011), Power-constrained limits, arXiv:1105.3166 (abstract read); the count is
/// held here at what guessing gives.</para>
/// </remarks>
public static class CountLimit
{
    /// <summary>The largest share of tasters who can tell, in this task.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="tasters"/>; for a two-sided pair, answers for the one beer.</param>
    /// <param name="beta">The one-sided error, above 0 and below 1: 0.05 gives the 95 % limit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double Discriminators(Protocol protocol, int tasters, int right, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, tasters);
        var count = protocol.Sides == 2 ? Math.Max(right, tasters - right) : right;
        var limited = Math.Max(count, (int)Math.Ceiling((tasters * protocol.Chance) - 1e-9));
        return protocol.Discriminators(ShareIntervals.UpperLimit(limited, tasters, beta));
    }

    /// <summary>The largest d-prime, if all tasters are alike; infinite where every answer is right.</summary>
    /// <inheritdoc cref="Discriminators"/>
    public static double DPrime(Protocol protocol, int tasters, int right, double beta = 0.05) =>
        protocol.DPrime(protocol.CorrectFromDiscriminators(Discriminators(protocol, tasters, right, beta)));

    /// <summary>
    /// The largest share of tasters who can tell and find the beers the other way round; null for a task without a direction, and for a
    /// two-sided pair, where <see cref="Discriminators"/> holds both ways. Taken at the count itself: 0 where so many named the expected
    /// beer that the other way round is refuted.
    /// </summary>
    /// <inheritdoc cref="Discriminators"/>
    public static double? DiscriminatorsReversed(Protocol protocol, int tasters, int right, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, tasters);
        return protocol.IsDirected ? Math.Max(0, 1 - (ShareIntervals.LowerLimit(right, tasters, beta) / protocol.Chance)) : null;
    }
}
