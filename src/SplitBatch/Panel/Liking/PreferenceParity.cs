using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Liking;

/// <summary>Is a large majority for either beer ruled out? A statement about liking, and never about telling the beers apart.</summary>
/// <remarks>
/// Exact binomial tails at one half plus and less the margin, each at beta. Tasters who cannot tell, and two camps who can, both give
/// an even split, so parity says nothing about whether anybody can tell; <see cref="PreferenceConsistency"/> does.
/// <para>Ref. the scope of the paired-preference test of ASTM (read; its number, E2263, from memory). Two one-sided tests: D. J.
/// Schuirmann (1987), from memory.</para>
/// </remarks>
/// <param name="ForA">Tasters for A.</param>
/// <param name="ForB">Tasters for B.</param>
/// <param name="Margin">How far from one half a majority would matter, above 0 and below one half: 0.2 stands for 30 : 70.</param>
/// <param name="Beta">The chance of ruling it out although it is true.</param>
public sealed record PreferenceParity(int ForA, int ForB, double Margin, double Beta)
{
    /// <summary>The counts for B that rule a majority beyond the margin out; null where so few tasters say nothing.</summary>
    public CountRange? Range => RangeOf(ForA + ForB, Margin, Beta);

    /// <summary>Whether a majority beyond the margin, for either beer, is ruled out.</summary>
    public bool MajorityRuledOut => Range?.Contains(ForB) == true;

    /// <summary>The larger of the two chances of a count so near an even split if the majority were as large as the margin.</summary>
    public double PValue => Math.Max(
        ExactBinomial.AtMost(ForB, ForA + ForB, 0.5 + Margin), ExactBinomial.AtLeast(ForB, ForA + ForB, 0.5 - Margin));

    /// <summary>Tests for parity.</summary>
    /// <param name="forA">Tasters for A, zero or more.</param>
    /// <param name="forB">Tasters for B, zero or more; at least one taster chose.</param>
    /// <param name="margin">How far from one half a majority would matter, above 0 and below 0.5; fix it before serving.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or nobody chose.</exception>
    public static PreferenceParity Of(int forA, int forB, double margin, double beta = 0.05)
    {
        Counts.Check(Guard.NotNegative(forB), Guard.NotNegative(forA) + forB);
        _ = RangeOf(forA + forB, margin, beta);
        return new(forA, forB, margin, beta);
    }

    /// <summary>The counts for B that rule the majority out, for planning; null where so few tasters say nothing.</summary>
    /// <param name="tasters">Tasters who choose, at least 1.</param>
    /// <param name="margin">Above 0 and below 0.5.</param>
    /// <param name="beta">Above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static CountRange? RangeOf(int tasters, double margin, double beta = 0.05)
    {
        Guard.OpenShare(2 * margin, nameof(margin));
        Guard.OpenShare(2 * beta, nameof(beta));
        return MarginCounts.RuledOut(Protocol.PairedTwoSided, tasters, DeclaredMargin.OfShare(2 * margin), beta);
    }

    /// <summary>
    /// For example <c>31 for B, 29 for A: a majority beyond 30 : 70 is ruled out. That says nothing about telling the beers apart.</c>
    /// </summary>
    public override string ToString()
    {
        var split = FormattableString.Invariant($"{Printed.Chosen(100 * (0.5 - Margin))} : {Printed.Chosen(100 * (0.5 + Margin))}");
        var outcome = MajorityRuledOut
            ? "is ruled out"
            : Range is { } range ? $"is not ruled out ({range} for B would have done)" : "cannot be ruled out by so few";
        return $"{ForB} for B, {ForA} for A: a majority beyond {split} {outcome}. That says nothing about telling the beers apart.";
    }
}
