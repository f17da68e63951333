using SplitBatch.Numbers;

namespace SplitBatch.Series;

/// <summary>In how many of some brews a difference is there, and in what share of all such brews it may be.</summary>
public static class BrewCount
{
    /// <summary>
    /// The p-value of "there is a difference in at least u of these brews": (k - u + 1) times the u-th smallest p, at most 1.
    /// </summary>
    /// <param name="pValues">One valid p-value for each brew, each in [0, 1]; brews need not have the same tasters or protocol.</param>
    /// <param name="atLeast">u, from 1 to the number of brews.</param>
    /// <remarks>
    /// Ref. partial conjunction: Y. Benjamini and R. Heller (2008), Biometrics 64, 1215 (from memory); M. Bogomolov (2021), abstract
    /// read. It holds also where brews share tasters.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double PValueOfAtLeast(IReadOnlyList<double> pValues, int atLeast)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        foreach (var p in pValues) Guard.Share(p, nameof(pValues));
        Guard.InRange(atLeast, 1, pValues.Count);
        return Math.Min(1, (pValues.Count - atLeast + 1) * pValues.Order().ElementAt(atLeast - 1));
    }

    /// <summary>
    /// The largest u for which "at least u of these brews" is shown, and so is every smaller number; 0 where none is. Stepping up one by
    /// one keeps alpha for all steps together.
    /// </summary>
    /// <param name="pValues">One valid p-value for each brew, each in [0, 1].</param>
    /// <param name="alpha">The chance of claiming more brews than there are, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int ShownInAtLeast(IReadOnlyList<double> pValues, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        Guard.OpenShare(alpha);
        return Enumerable.Range(1, pValues.Count).TakeWhile(u => ExactBinomial.Reaches(PValueOfAtLeast(pValues, u), alpha)).Count();
    }

    /// <summary>The one-sided exact limits, each at the level, of the share of all such brews in which it happens.</summary>
    /// <param name="brews">Brews, at least 1, a fair sample of those that are spoken of.</param>
    /// <param name="found">Brews in which it happened.</param>
    /// <param name="level">Level of each limit, above 0 and below 1.</param>
    /// <returns>Both limits; together they are an interval of level 1 - 2 (1 - level).</returns>
    /// <remarks>Ref. Clopper and Pearson (1934), Biometrika 26, 404.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static Interval ShareOfBrews(int brews, int found, double level = 0.95)
    {
        Guard.Positive(brews);
        Guard.InRange(found, 0, brews);
        var tail = 1 - Guard.OpenShare(level);
        return new(ShareIntervals.LowerLimit(found, brews, tail), ShareIntervals.UpperLimit(found, brews, tail), level - tail);
    }
}
