using SplitBatch.Numbers;

namespace SplitBatch.Lab;

/// <summary>Do two halves lie within a declared margin of each other, as a method measures them?</summary>
/// <param name="Difference">First mean less second, in the analyte's unit.</param>
/// <param name="StandardError">Standard error of the difference.</param>
/// <param name="Freedom">Degrees of freedom of the standard deviation; infinite where it is known.</param>
/// <param name="Repeatability">The standard deviation within a run that was used.</param>
/// <param name="Margin">The difference that would matter, declared beforehand.</param>
/// <param name="Alpha">The chance of calling halves equivalent that differ by the margin, on each side.</param>
/// <remarks>
/// Two one-sided tests at alpha; equivalent exactly if the interval of level 1 - 2 alpha lies inside the margin on both sides. A bias
/// that both halves share stays unseen. Ref. D. J. Schuirmann (1987), J. Pharmacokin. Biopharm. 15, 657 (from memory); ASTM E2935, scope
/// read; G. B. Limentani et al. (2005), Anal. Chem. 77, 221A (from memory).
/// </remarks>
public sealed record LabEquivalence(double Difference, double StandardError, double Freedom, double Repeatability, double Margin,
    double Alpha)
{
    /// <summary>The interval of the difference at level 1 - 2 alpha: 90 % for an alpha of 5 %.</summary>
    public Interval Interval =>
        new(Difference - (Bound(Alpha) * StandardError), Difference + (Bound(Alpha) * StandardError), 1 - (2 * Alpha));

    /// <summary>The larger of the two one-sided p-values.</summary>
    public double PValue => Below(-(Margin - Math.Abs(Difference)) / StandardError);

    /// <summary>Whether a difference as large as the margin is ruled out.</summary>
    public bool IsEquivalent => Math.Abs(Difference) + (Bound(Alpha) * StandardError) < Margin;

    /// <summary>Whether a difference is shown, two-sided at alpha.</summary>
    public bool DifferenceShown => Math.Abs(Difference) > Bound(Alpha / 2) * StandardError;

    /// <summary>The answer to both questions.</summary>
    public LabAnswer Answer => (DifferenceShown, IsEquivalent) switch
    {
        (true, false) => LabAnswer.DifferenceShown,
        (true, true) => LabAnswer.DifferenceWithinMargin,
        (false, true) => LabAnswer.WithinMargin,
        (false, false) => LabAnswer.Inconclusive,
    };

    /// <summary>The smallest margin that equal means could meet with this scatter and these numbers.</summary>
    public double SmallestMargin => Bound(Alpha) * StandardError;

    /// <summary>Tests two means with a standard deviation that is known.</summary>
    /// <param name="difference">First mean less second, in the analyte's unit.</param>
    /// <param name="countA">Results in the first mean, at least 1.</param>
    /// <param name="countB">Results in the second mean, at least 1.</param>
    /// <param name="repeatability">Standard deviation within a run, above zero.</param>
    /// <param name="margin">The difference that would matter, above zero; fix it before measuring.</param>
    /// <param name="betweenRuns">Standard deviation from run to run where the halves were measured in separate runs; 0 for one
    /// run.</param>
    /// <param name="alpha">The chance of calling halves equivalent that differ by the margin, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static LabEquivalence Known(
        double difference, int countA, int countB, double repeatability, double margin, double betweenRuns = 0,
        double alpha = 0.05) => new(
        Finite(difference), RunDifference.StandardError(repeatability, countA, countB, betweenRuns), double.PositiveInfinity,
        repeatability, Guard.Positive(margin), Level(alpha));

    /// <summary>Tests two sets of results of one run with the scatter that the run itself shows.</summary>
    /// <param name="a">Results of the first half, at least 1.</param>
    /// <param name="b">Results of the second half, at least 1.</param>
    /// <param name="margin">The difference that would matter, above zero; fix it before measuring.</param>
    /// <param name="others">Results of other samples of the same run, each group one sample; their scatter is pooled with that of the
    /// halves.</param>
    /// <param name="alpha">The chance of calling halves equivalent that differ by the margin, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentException">A half has no result, or no sample has two results, so that nothing is known of the
    /// scatter.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or all replicates are the same, which shows
    /// rounding and no scatter.</exception>
    public static LabEquivalence Estimated(
        IReadOnlyList<double> a, IReadOnlyList<double> b, double margin, IReadOnlyList<IReadOnlyList<double>>? others = null,
        double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        if (a.Count == 0 || b.Count == 0) throw new ArgumentException("Each half needs a result.", nameof(a));
        IReadOnlyList<double>[] groups = [a, b, .. others ?? []];
        foreach (var result in groups.SelectMany(group => group)) Finite(result);
        var freedom = groups.Sum(group => Math.Max(0, group.Count - 1));
        if (freedom == 0)
            throw new ArgumentException("With one result of each sample nothing is known of the scatter; give the laboratory's "
                + "repeatability instead.", nameof(others));
        var squares = groups.Where(group => group.Count > 1)
            .Sum(group => Sample.Of(group).Deviation is var s ? (group.Count - 1) * s * s : 0);
        var deviation = Math.Sqrt(squares / freedom);
        return new(a.Average() - b.Average(), RunDifference.StandardError(deviation, a.Count, b.Count), freedom, deviation,
            Guard.Positive(margin), Level(alpha));
    }

    /// <summary>For example <c>0.6 apart (90 % interval -0.22 to 1.42): within 2 of each other.</c></summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Printed.Ratio(Math.Abs(Difference))} apart ({Printed.ChosenPercent(Interval.Level)} interval {Printed.Ratio(Interval.Low)} to ")
            + FormattableString.Invariant($"{Printed.Ratio(Interval.High)}): {(IsEquivalent ? "within" : "not shown to lie within")} ")
            + FormattableString.Invariant($"{Printed.Chosen(Margin)} of each other.");

    internal static double Level(double alpha) => Guard.OpenShare(2 * alpha, nameof(alpha)) / 2;

    private static double Finite(double value) => Guard.InRange(value, double.MinValue, double.MaxValue);

    private double Bound(double tail) => Student.Quantile(1 - tail, Freedom);

    private double Below(double t) =>
        double.IsPositiveInfinity(Freedom) ? MathNet.Numerics.Distributions.Normal.CDF(0, 1, t) : Student.Below(t, Freedom);
}

/// <summary>What two sets of results say about a difference and about a margin.</summary>
public enum LabAnswer
{
    /// <summary>A difference is shown, and it may be as large as the margin or larger.</summary>
    DifferenceShown,

    /// <summary>A difference is shown, and one as large as the margin is ruled out.</summary>
    DifferenceWithinMargin,

    /// <summary>No difference is shown, and one as large as the margin is ruled out.</summary>
    WithinMargin,

    /// <summary>Neither is shown nor ruled out.</summary>
    Inconclusive,
}
