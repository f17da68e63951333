using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>Looks that are planned: the level that each may use so that all together keep alpha.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Alpha">The chance of a false difference that all looks together may have.</param>
/// <param name="Looks">The numbers of sets after which the count is looked at, rising; the last is the whole panel.</param>
/// <param name="Level">The largest attainable level that all looks can share; 0 where none can.</param>
/// <param name="CriticalCounts">The count that shows a difference at each look; null where none does.</param>
/// <param name="TrueAlpha">The chance of a false difference at one look or another, exactly.</param>
/// <remarks>
/// Counts are whole, so a level moves in steps: those are tried that a tail at some look attains. Valid for one set by each taster in
/// order of arrival. Ref. a common level for repeated looks: S. J. Pocock (1977), Biometrika 64, 191 (from memory), here by exact path
/// probabilities.
/// </remarks>
public sealed record LooksLevel(
    Protocol Protocol, double Alpha, IReadOnlyList<int> Looks, double Level, IReadOnlyList<int?> CriticalCounts, double TrueAlpha)
{
    /// <summary>Finds the level.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance of a false difference that all looks together may have, above 0 and below 1.</param>
    /// <param name="looks">Numbers of sets, at least one, each at least 1, rising.</param>
    /// <exception cref="ArgumentException">No looks, or they do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static LooksLevel Of(Protocol protocol, double alpha, params int[] looks)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(alpha);
        CountPath.Check(looks);
        var levels =
            looks.SelectMany(n => Enumerable.Range(0, n + 1).Select(x => protocol.Sides * ExactBinomial.AtLeast(x, n, protocol.Chance)))
                .Where(tail => ExactBinomial.Reaches(tail, alpha)).Distinct().Order().ToArray();
        var best = Steps.Last(levels, level => ExactBinomial.Reaches(PathOf(protocol, looks, Criticals(protocol, looks, level)), alpha));
        var counts = best < 0 ? new int?[looks.Length] : Criticals(protocol, looks, levels[best]);
        return new(protocol, alpha, looks, best < 0 ? 0 : levels[best], counts, PathOf(protocol, looks, counts));
    }

    /// <summary>For example <c>Looks after 12 and 24 tasters at 2.84 % each: a false difference in 3.9 % of panels.</c></summary>
    public override string ToString() =>
        $"Looks after {string.Join(", ", Looks)} tasters at {Printed.ChosenPercent(Level)} each: a false difference in "
            + $"{Printed.ChosenPercent(TrueAlpha)} of panels.";

    private static int?[] Criticals(Protocol protocol, int[] looks, double level) =>
        [.. looks.Select(n => Power.CriticalCount(protocol, n, level))];

    private static double PathOf(Protocol protocol, int[] looks, int?[] criticals)
    {
        var at = looks.Zip(criticals).ToDictionary(pair => pair.First, pair => pair.Second);
        return CountPath.ChanceOfStopping(protocol.Chance, looks, (n, x) => (protocol.Sides == 1 ? x : Math.Max(x, n - x)) >= at[n]);
    }
}
