using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Liking;

/// <summary>Which beer do tasters prefer? Two-sided exact test of those who chose one, against choosing blindly.</summary>
/// <remarks>
/// In a pair, choosing blindly gives B in one half of cases. In a set of three cups, of which two are one beer, it gives B in one third
/// or two thirds, so there the count is compared with the sum of binomials that the cups make; the two-sided p is twice the smaller tail,
/// at most 1.
/// </remarks>
/// <param name="ForA">Tasters for A.</param>
/// <param name="ForB">Tasters for B.</param>
/// <param name="None">Tasters without a preference; they are reported and left out of the test.</param>
/// <param name="Alpha">The chance of showing a preference that is not there.</param>
public sealed record PreferenceTest(int ForA, int ForB, int None, double Alpha)
{
    /// <summary>For each who chose, the share of cups B among the cups to choose from; empty where it was one half for all.</summary>
    public IReadOnlyList<double> CupsB { get; init; } = [];

    /// <summary>Whether somebody chose among cups of which more were one beer than the other.</summary>
    public bool IsUneven => AmongUneven || CupsB.Any(share => Math.Abs(share - 0.5) > 1e-9);

    /// <summary>Whether such cups were served, although nobody may have chosen one.</summary>
    public bool AmongUneven { get; init; }

    /// <summary>The choices of B that choosing blindly gives on average.</summary>
    public double BlindlyForB => IsUneven ? CupsB.Sum() : (ForA + ForB) / 2.0;

    /// <summary>The two-sided p-value; 1 where nobody chose.</summary>
    public double PValue => ForA + ForB == 0 ? 1
        : IsUneven ? Math.Min(1, 2 * Math.Min(CountChances.AtLeast(Blindly, ForB), CountChances.AtMost(Blindly, ForB)))
        : DifferenceTest.Of(Protocol.PairedTwoSided, ForA + ForB, ForB, Alpha).PValue;

    /// <summary>Whether a preference is shown.</summary>
    public bool PreferenceShown => ExactBinomial.Reaches(PValue, Alpha);

    /// <summary>
    /// Exact interval of the share for B among those who chose; null where nobody did, or where cups were uneven, so that choosing
    /// blindly is mixed with liking.
    /// </summary>
    public Interval? ShareForB => ForA + ForB == 0 || IsUneven ? null : ShareIntervals.ClopperPearson(ForB, ForA + ForB);

    /// <summary>Tests a preference.</summary>
    /// <param name="forA">Tasters for A, zero or more.</param>
    /// <param name="forB">Tasters for B, zero or more.</param>
    /// <param name="none">Tasters without a preference, zero or more.</param>
    /// <param name="alpha">The chance of showing a preference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PreferenceTest Of(int forA, int forB, int none = 0, double alpha = 0.05) =>
        new(Guard.NotNegative(forA), Guard.NotNegative(forB), Guard.NotNegative(none), Guard.OpenShare(alpha));

    /// <summary>
    /// For example <c>14 for B, 6 for A, 4 without a preference: no preference shown (p = 0.115); between 46 and 88 % may prefer B.</c>
    /// </summary>
    public override string ToString()
    {
        var none = None == 0 ? "" : $", {None} without a preference";
        if (IsUneven)
            return FormattableString.Invariant($"A B cup was chosen in {ForB} of {ForA + ForB} sets{none}; choosing blindly gives ")
                + FormattableString.Invariant($"{Printed.Chosen(BlindlyForB)} ({Printed.PValue(PValue)}, two-sided).");
        if (ShareForB is not { } share) return $"Nobody chose{none}.";
        var outcome = PreferenceShown ? $"a preference for {(ForB > ForA ? "B" : "A")} is shown" : "no preference shown";
        return $"{ForB} for B, {ForA} for A{none}: {outcome} ({Printed.PValue(PValue)}); of those who choose, between "
            + $"{Printed.Percent(share.Low)} and {Printed.Percent(share.High)} may prefer B.";
    }

    /// <summary>The chance of each number of choices of B, if the beer does not matter.</summary>
    private double[] Blindly => CupsB.GroupBy(share => share)
        .Aggregate(new double[] { 1 }, (sum, alike) => CountChances.Sum(sum, CountChances.Binomial(alike.Count(), alike.Key)));
}
