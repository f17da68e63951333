using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Liking;

/// <summary>Do tasters choose the same beer twice? The only preference statement about telling the beers apart, also at 50 : 50.</summary>
/// <remarks>
/// Every taster gets the pair twice, in opposite orders and under new codes. Whoever cannot tell agrees with himself by chance: with
/// a habit of taking the first cup in a share b of servings, in 2 b (1 - b), at most one half. So the binomial at one half is safe; with
/// equal orders, or codes that are recognised, it is not.
/// <para>Ref. replicated preference and placebo pairs: G. E. Ferris (1958), Biometrics 14, 39 (from memory); H. S. Kim, H.-S. Lee, M.
/// O'Mahony and K.-O. Kim (2008), abstract read. The bound on a habit is derived in the project.</para>
/// </remarks>
/// <param name="Tasters">Tasters who chose a beer both times; others are reported and left out.</param>
/// <param name="SameTwice">Of those, how many chose the same beer twice.</param>
/// <param name="Alpha">The chance of showing that tasters can tell although none can.</param>
public sealed record PreferenceConsistency(int Tasters, int SameTwice, double Alpha)
{
    /// <summary>The chance that so many, or more, choose the same beer twice if nobody can tell.</summary>
    public double PValue => ExactBinomial.AtLeast(SameTwice, Tasters, 0.5);

    /// <summary>Whether it is shown that some tasters can tell the beers apart. It is no majority for either beer.</summary>
    public bool TellingShown => ExactBinomial.Reaches(PValue, Alpha);

    /// <summary>The smallest number of tasters who chose the same beer twice that shows it; null where so few tasters cannot.</summary>
    public int? CriticalCount => ExactBinomial.CriticalCount(Tasters, 0.5, Alpha) is var count && count <= Tasters ? count : null;

    /// <summary>Tests consistency.</summary>
    /// <param name="tasters">Tasters who chose a beer both times, at least 1.</param>
    /// <param name="sameTwice">Of those, how many chose the same beer twice.</param>
    /// <param name="alpha">The chance of showing that tasters can tell although none can, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PreferenceConsistency Of(int tasters, int sameTwice, double alpha = 0.05)
    {
        Counts.Check(sameTwice, tasters);
        return new(tasters, sameTwice, Guard.OpenShare(alpha));
    }

    /// <summary>For example <c>16 of 20 chose the same beer twice: tasters can tell the beers apart (p = 0.0059).</c></summary>
    public override string ToString() => $"{SameTwice} of {Tasters} chose the same beer twice: "
        + (TellingShown ? $"some tasters can tell the beers apart ({Printed.PValue(PValue)})."
            : $"not shown that anybody can tell the beers apart ({Printed.PValue(PValue)}).");
}
