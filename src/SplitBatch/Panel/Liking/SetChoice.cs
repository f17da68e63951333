using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Liking;

/// <summary>A liking asked inside sets of three cups, where two cups are one beer: what the count of choices may say.</summary>
/// <remarks>
/// Choosing a cup blindly gives B in one third of the sets AAB and two thirds of the sets ABB, not in one half. So under "the beer does
/// not matter" the count is the sum of two binomials. The two-sided p is twice the smaller tail, at most 1. With sets AAB only, no share
/// "for B" may be printed: a B cup is chosen by those who like B and by one third of those who choose blindly. Not for answers of
/// only those who were right: lucky guessers are among them. Serve a separate pair instead. Plain arithmetic.
/// </remarks>
/// <param name="SetsAab">Sets of two cups A and one B, zero or more.</param>
/// <param name="SetsAbb">Sets of one cup A and two B, zero or more.</param>
/// <param name="ForB">Sets in which a B cup was chosen.</param>
/// <param name="Alpha">The chance of showing a liking that is not there.</param>
public sealed record SetChoice(int SetsAab, int SetsAbb, int ForB, double Alpha)
{
    private double[] Blindly => CountChances.Sum(CountChances.Binomial(SetsAab, 1.0 / 3), CountChances.Binomial(SetsAbb, 2.0 / 3));

    /// <summary>The choices of a B cup that choosing blindly gives on average.</summary>
    public double ByChance => (SetsAab + (2.0 * SetsAbb)) / 3;

    /// <summary>The chance of so many choices of B, or more, if the beer does not matter.</summary>
    public double Upper => CountChances.AtLeast(Blindly, ForB);

    /// <summary>The chance of so few choices of B, or fewer, if the beer does not matter.</summary>
    public double Lower => CountChances.AtMost(Blindly, ForB);

    /// <summary>Twice the smaller tail, at most 1.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(Upper, Lower));

    /// <summary>Whether it is shown that the beer matters to the choice.</summary>
    public bool LikingShown => ExactBinomial.Reaches(PValue, Alpha);

    /// <summary>Tests the choices of a B cup.</summary>
    /// <param name="setsAab">Sets of two cups A and one B, zero or more.</param>
    /// <param name="setsAbb">Sets of one cup A and two B, zero or more.</param>
    /// <param name="forB">Sets in which a B cup was chosen, from 0 to the number of sets.</param>
    /// <param name="alpha">The chance of showing a liking that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or there are no sets.</exception>
    public static SetChoice Of(int setsAab, int setsAbb, int forB, double alpha = 0.05)
    {
        Counts.Check(forB, Guard.NotNegative(setsAab) + Guard.NotNegative(setsAbb));
        return new(setsAab, setsAbb, forB, Guard.OpenShare(alpha));
    }

    /// <summary>
    /// The estimated share of those who choose B because it is B, less the share of those who choose A because it is A: p(AAB) + p(ABB) -
    /// 1. It needs both kinds of set.
    /// </summary>
    /// <param name="setsAab">Sets of two cups A and one B, at least 1.</param>
    /// <param name="forBInAab">Of those, sets in which B was chosen.</param>
    /// <param name="setsAbb">Sets of one cup A and two B, at least 1.</param>
    /// <param name="forBInAbb">Of those, sets in which a B cup was chosen.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double NetLiking(int setsAab, int forBInAab, int setsAbb, int forBInAbb)
    {
        Counts.Check(forBInAab, setsAab);
        Counts.Check(forBInAbb, setsAbb);
        return ((double)forBInAab / setsAab) + ((double)forBInAbb / setsAbb) - 1;
    }

    /// <summary>For example <c>A B cup was chosen in 8 of 24 sets; choosing blindly gives 8.</c></summary>
    public override string ToString() => FormattableString.Invariant(
        $"A B cup was chosen in {ForB} of {SetsAab + SetsAbb} sets; choosing blindly gives {Printed.Expected(ByChance)} ")
            + FormattableString.Invariant($"({Printed.PValue(PValue)}, two-sided).");
}
