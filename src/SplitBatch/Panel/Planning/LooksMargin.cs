using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>Looks that are planned: the level at which each may rule a margin out so that all together keep beta.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Margin">The margin declared.</param>
/// <param name="Beta">The chance of ruling it out although it is true that all looks together may have.</param>
/// <param name="Looks">The numbers of sets after which the count is looked at, rising; the last is the whole panel.</param>
/// <param name="Level">The largest attainable level that all looks can share; 0 where none can.</param>
/// <param name="Ranges">The counts that rule the margin out at each look; null where none does.</param>
/// <param name="TrueBeta">The chance of ruling the margin out at one look or another although it is true, exactly; for a directed task in
/// the worse of the two directions.</param>
/// <remarks>As <see cref="LooksLevel"/>, from the other side.</remarks>
public sealed record LooksMargin(
    Protocol Protocol, DeclaredMargin Margin, double Beta, IReadOnlyList<int> Looks, double Level, IReadOnlyList<CountRange?> Ranges,
    double TrueBeta)
{
    /// <summary>The true chance of wrongly ruling the margin out when each look allows itself the whole of beta.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="margin">The margin declared.</param>
    /// <param name="beta">The chance that each look allows itself, above 0 and below 1.</param>
    /// <param name="looks">Numbers of sets, at least one, each at least 1, rising.</param>
    /// <exception cref="ArgumentException">No looks, or they do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double TrueBetaOf(Protocol protocol, DeclaredMargin margin, double beta, params int[] looks)
    {
        CountPath.Check(looks);
        return PathOf(protocol, margin, looks, RangesOf(protocol, margin, looks, beta));
    }

    /// <summary>Finds the level.</summary>
    /// <inheritdoc cref="TrueBetaOf"/>
    public static LooksMargin Of(Protocol protocol, DeclaredMargin margin, double beta, params int[] looks)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Guard.OpenShare(beta);
        CountPath.Check(looks);
        var atMargin = margin.CorrectIn(protocol);
        var levels = looks.SelectMany(n => Enumerable.Range(0, n + 1).Select(x => ExactBinomial.AtMost(x, n, atMargin)))
            .Where(tail => tail > 0 && ExactBinomial.Reaches(tail, beta)).Distinct().Order().ToArray();
        var best = Steps.Last(levels,
            level => ExactBinomial.Reaches(PathOf(protocol, margin, looks, RangesOf(protocol, margin, looks, level)), beta));
        var ranges = best < 0 ? new CountRange?[looks.Length] : RangesOf(protocol, margin, looks, levels[best]);
        return new(protocol, margin, beta, looks, best < 0 ? 0 : levels[best], ranges, PathOf(protocol, margin, looks, ranges));
    }

    private static CountRange?[] RangesOf(Protocol protocol, DeclaredMargin margin, int[] looks, double level) =>
        [.. looks.Select(n => MarginCounts.RuledOut(protocol, n, margin, level))];

    private static double PathOf(Protocol protocol, DeclaredMargin margin, int[] looks, CountRange?[] ranges)
    {
        var at = looks.Zip(ranges).ToDictionary(pair => pair.First, pair => pair.Second);
        var path = If(margin.CorrectIn(protocol));
        return protocol.IsDirected ? Math.Max(path, If(margin.CorrectReversedIn(protocol))) : path;

        double If(double correct) => CountPath.ChanceOfStopping(correct, looks, (n, x) => at[n]?.Contains(x) == true);
    }
}
