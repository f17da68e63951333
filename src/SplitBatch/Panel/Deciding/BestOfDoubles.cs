using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Deciding;

/// <summary>What it costs to try several rules for people who gave two ballots and to keep the one that shows a difference.</summary>
public static class BestOfDoubles
{
    /// <summary>
    /// The true chance of a false difference when the first ballot, the last and none of each double is tried and the best is taken,
    /// exactly.
    /// </summary>
    /// <param name="protocol">A one-sided protocol with a known guessing chance.</param>
    /// <param name="singles">Tasters with one ballot, at least 1.</param>
    /// <param name="doubles">Tasters with two, zero or more.</param>
    /// <param name="alpha">The chance of a false difference that each rule allows itself, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The protocol is two-sided.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double TrueAlpha(Protocol protocol, int singles, int doubles, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        if (protocol.Sides == 2)
            throw new ArgumentException("The protocol is two-sided; this is worked out for protocols with a right answer.",
                nameof(protocol));
        Guard.Positive(singles);
        Guard.NotNegative(doubles);
        var g = protocol.Chance;
        var withAll = ExactBinomial.CriticalCount(singles + doubles, g, alpha);
        var withNone = ExactBinomial.CriticalCount(singles, g, alpha);
        double shown = 0;
        for (var right = 0; right <= singles; right++)
        {
            // First and last ballots are separate guesses, so both fall short with the square of the chance that one does.
            var oneShort = ExactBinomial.AtMost(withAll - right - 1, doubles, g);
            shown += ExactBinomial.Exactly(right, singles, g) * (right >= withNone ? 1 : 1 - (oneShort * oneShort));
        }

        return shown;
    }
}
