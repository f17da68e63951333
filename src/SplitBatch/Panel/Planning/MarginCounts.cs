using SplitBatch.Panel.Protocols;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Planning;

/// <summary>
/// Which counts rule a declared margin out, one set for each taster: the exact binomial on every side from which a difference could come.
/// </summary>
/// <remarks>
/// A task without a direction is tested from above, P(X &lt;= x | margin) &lt;= beta. A directed one is tested from both sides, because a
/// difference the other way round is a difference too: P(X &gt;= x | margin reversed) &lt;= beta as well. A two-sided pair is tested
/// alike on both sides. Where only counts below what guessing gives would do, none does: so small a panel says nothing.
/// <para>Ref. ISO 4120, 8.2, for the smallest panel; two one-sided tests: D. J. Schuirmann (1987), J. Pharmacokin. Biopharm. 15, 657, and
/// S. Wellek (2010), Testing Statistical Hypotheses of Equivalence and Noninferiority (both from memory).</para>
/// </remarks>
public static class MarginCounts
{
    /// <summary>
    /// The counts of right answers (for a two-sided pair: answers for the one beer) that rule the margin out; null where the panel is too
    /// small for any to.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, one for each taster, at least 1.</param>
    /// <param name="margin">The margin declared.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static CountRange? RuledOut(Protocol protocol, int tasters, DeclaredMargin margin, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Guard.Positive(tasters);
        var highest = ExactBinomial.LargestCount(tasters, margin.CorrectIn(protocol), beta);
        var lowest = protocol.Sides == 2 ? tasters - highest
            : protocol.IsDirected ? ExactBinomial.CriticalCount(tasters, margin.CorrectReversedIn(protocol), beta)
            : 0;
        return lowest <= highest && highest >= tasters * protocol.Chance ? new(lowest, highest) : null;
    }

    /// <summary>The chance of so few right answers, or fewer, if the difference were as large as the margin.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="margin">The margin declared.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double PValue(Protocol protocol, int tasters, int right, DeclaredMargin margin)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Counts.Check(right, tasters);
        return ExactBinomial.AtMost(right, tasters, margin.CorrectIn(protocol));
    }

    /// <summary>
    /// The chance of so many answers for the expected beer, or more, if the difference were as large as the margin and the other way
    /// round; null for a task without a direction.
    /// </summary>
    /// <inheritdoc cref="PValue"/>
    public static double? PValueReversed(Protocol protocol, int tasters, int right, DeclaredMargin margin)
    {
        ArgumentNullException.ThrowIfNull(margin);
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, tasters);
        return protocol.IsDirected ? ExactBinomial.AtLeast(right, tasters, margin.CorrectReversedIn(protocol))
            : protocol.Sides == 2 ? ExactBinomial.AtLeast(right, tasters, 1 - margin.CorrectIn(protocol))
            : null;
    }
}
