using SplitBatch.Numbers;

namespace SplitBatch.Series;

/// <summary>
/// Do brews lean the same way? Exact two-sided tests that assume nothing about how brews scatter. Neither can reach 5 % below six brews.
/// </summary>
public static class BrewSigns
{
    /// <summary>The most brews for which all signs are tried.</summary>
    public const int MostBrews = 24;

    /// <summary>
    /// The sign test: the chance that so many brews, or more, lean the same way if each is as likely to lean the one way as the other.
    /// </summary>
    /// <param name="brews">Brews that lean at all, at least 1.</param>
    /// <param name="same">Of those, how many lean to the one side.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double SignPValue(int brews, int same)
    {
        Guard.Positive(brews);
        Guard.InRange(same, 0, brews);
        return Math.Min(1, 2 * ExactBinomial.AtLeast(Math.Max(same, brews - same), brews, 0.5));
    }

    /// <summary>
    /// The sign-flip test of the mean: the share of all ways to give the numbers signs that put their mean as far from zero, or farther.
    /// </summary>
    /// <param name="brews">One finite number for each brew, from 1 to <see cref="MostBrews"/> brews.</param>
    /// <remarks>Ref. R. A. Fisher (1935), The Design of Experiments, section 21.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or there are none or too many.</exception>
    public static double FlipPValue(IReadOnlyList<double> brews)
    {
        ArgumentNullException.ThrowIfNull(brews);
        Guard.InRange(brews.Count, 1, MostBrews, nameof(brews));
        foreach (var brew in brews) Guard.InRange(brew, double.MinValue, double.MaxValue, nameof(brews));
        var least = Math.Abs(brews.Sum()) - (1e-12 * brews.Sum(Math.Abs)); // A tie within rounding counts.
        var ways = 1 << brews.Count;
        var far = 0;
        for (var signs = 0; signs < ways; signs++)
        {
            double sum = 0;
            for (var i = 0; i < brews.Count; i++) sum += (signs >> i & 1) == 1 ? brews[i] : -brews[i];
            if (Math.Abs(sum) >= least) far++;
        }

        return (double)far / ways;
    }
}
