using SplitBatch.Bitterness;
using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Lab;

/// <summary>
/// Each half's estimate beside the laboratory's value: how far off, whether both halves were equally far off, and what to change next
/// time.
/// </summary>
/// <remarks>
/// Relative standard uncertainties of estimate and laboratory are squared and added (law of propagation, JCGM 100:2008, 5.1). A half's 95
/// % interval holds every factor by which the estimate would have to be multiplied so that the measured value lies within 1.96 of the
/// root of it: it holds 1 when the two agree, and it reaches further up than down, without end where the root is above 1/1.96. The ratio
/// between the halves is handled as a logarithm: there the estimates' shared errors cancel as far as <see cref="Correlation"/> says, and
/// so does the laboratory's own bias.
/// </remarks>
public sealed record EstimateCheck
{
    private const double Wide = 1.96;

    private EstimateCheck(EstimatedHalf a, EstimatedHalf b, double correlation, LabPrecision? precision)
    {
        (A, B, Precision) = (a, b, precision);
        Correlation = Guard.InRange(correlation, -1.0, 1.0);
        foreach (var half in new[] { a, b }) Guard.Positive(half.Measured.Mean, "measured");
    }

    /// <summary>Half A.</summary>
    public EstimatedHalf A { get; }

    /// <summary>Half B.</summary>
    public EstimatedHalf B { get; }

    /// <summary>How far the errors of the two estimates go together, in [-1, 1]: 1 where all is shared.</summary>
    public double Correlation { get; }

    /// <summary>What is known of the method's precision.</summary>
    public LabPrecision? Precision { get; }

    /// <summary>The ratio of half A with a 95 % interval; null where no precision is known.</summary>
    public Interval? RatioA => FactorsThatFit(A);

    /// <summary>The ratio of half B with a 95 % interval; null where no precision is known.</summary>
    public Interval? RatioB => FactorsThatFit(B);

    /// <summary>B's ratio over A's: 1 where both halves were equally far off.</summary>
    public double Relative => B.Ratio / A.Ratio;

    /// <summary>B's ratio over A's with a 95 % interval; null where no repeatability is known.</summary>
    public Interval? RelativeInterval => Around(Relative, Between());

    /// <summary>Whether both halves were equally far off as far as can be told: null where it cannot be told.</summary>
    public bool? EquallyFar => RelativeInterval?.Contains(1);

    /// <summary>The geometric mean of both ratios: what the house's estimates would be multiplied by to fit this batch.</summary>
    public double HouseFactor => Math.Sqrt(A.Ratio * B.Ratio);

    /// <summary>What B's hops would be multiplied by to measure as A did, if bitterness follows the hops in proportion.</summary>
    public double ChargeFactorForB => A.Measured.Mean / B.Measured.Mean;

    /// <summary>Checks two halves.</summary>
    /// <param name="a">Half A.</param>
    /// <param name="b">Half B.</param>
    /// <param name="correlation">How far the errors of the two estimates go together, in [-1, 1].</param>
    /// <param name="precision">What is known of the method's precision; null for nothing.</param>
    /// <exception cref="ArgumentException">A half is not measured in bitterness units.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static EstimateCheck Of(EstimatedHalf a, EstimatedHalf b, double correlation, LabPrecision? precision)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        foreach (var half in new[] { a, b })
        {
            if (!half.Measured.Analyte.Equals(Analyte.Bitterness))
                throw new ArgumentException($"Half {half.Side} is measured as {half.Measured.Analyte}; an estimate is in "
                    + $"bitterness units.");
        }

        return new(a, b, correlation, precision);
    }

    /// <summary>Checks the doses of a trial against its laboratory return.</summary>
    /// <param name="match">The doses as weighed.</param>
    /// <param name="uncertainty">How sure they are.</param>
    /// <param name="lab">The two halves' bitterness as measured.</param>
    /// <exception cref="ArgumentException">The comparison is not of bitterness.</exception>
    public static EstimateCheck Of(ChargeMatch match, DoseUncertainty uncertainty, LabComparison lab)
    {
        ArgumentNullException.ThrowIfNull(match);
        ArgumentNullException.ThrowIfNull(uncertainty);
        ArgumentNullException.ThrowIfNull(lab);
        var (a, b, difference) = uncertainty.Deviation;
        var correlation = a * b == 0 ? 0 : Math.Clamp((a * a + b * b - difference * difference) / (2 * a * b), -1, 1);
        return Of(
            new(Side.A, match.A.Bitterness.Value, a, lab.A), new(Side.B, match.B.Bitterness.Value, b, lab.B), correlation,
            lab.Readings is [{ } only] ? only.Precision : null);
    }

    /// <summary>What to change next time, sentence by sentence.</summary>
    public IReadOnlyList<string> NextTime => [.. Advice()];

    /// <summary>The result in sentences.</summary>
    public override string ToString()
    {
        var together = (EquallyFar, RelativeInterval) switch
        {
            (null, _) => "Without a repeatability it cannot be told whether both halves were equally far off.",
            (true, { } range) =>
                $"Nothing shows that the halves were unequally far off (B's ratio is {Number(Relative)} of A's, {Range(range)}).",
            (_, { } range) => $"The halves were not equally far off: B's ratio is {Number(Relative)} of A's, {Range(range)}.",
            _ => "",
        };
        return $"{Line(A, RatioA)} {Line(B, RatioB)} {together}";
    }

    private IEnumerable<string> Advice()
    {
        var model = RatioA is { } a && RatioB is { } b && (a.Contains(1) || b.Contains(1));
        yield return model
            ? "The estimates are not shown to be off as a whole: leave the formula as it is, and let the house factor learn from further "
                + "batches."
            : Invariant($"Both estimates together fit this batch when multiplied by {Printed.Ratio(HouseFactor)}: add the batch to the ")
                + Invariant($"house factor, which weighs it against others, before the next dose.");
        if (EquallyFar == false)
        {
            yield return Invariant($"One lot gave more than its assay and form promised. To measure alike, B's hops would be multiplied ")
                + Invariant($"by {Printed.Ratio(ChargeFactorForB)}, if bitterness follows the hops in proportion; have the alpha acid of ")
                + Invariant($"both lots assayed again before the next dose.");
        }
        else if (EquallyFar is null)
        {
            yield return "Ask the laboratory for its repeatability, and for two replicates of each sample.";
        }
    }

    private static string Line(EstimatedHalf half, Interval? range)
    {
        var interval = range is { } known ? $", {Range(known)}" : "; no precision is stated, so its uncertainty is not known";
        return Invariant($"{half.Side}: estimated {Printed.Bitterness(half.Estimate)} IBU ")
            + Invariant($"({Printed.Range(half.EstimateInterval, ibu => Printed.Bitterness(ibu))}), measured ")
            + Invariant($"{Printed.Bitterness(half.Measured.Mean)} BU, ratio {Printed.Ratio(half.Ratio)}{interval}.");
    }

    /// <summary>Relative variance of a ratio; the laboratory's own bias counts where its reproducibility is known.</summary>
    private double? Absolute(EstimatedHalf half)
    {
        var (level, count) = (half.Measured.Mean, half.Measured.Count);
        var r = Precision?.Repeatability?.StandardDeviationAt(level);
        var big = Precision?.Reproducibility?.StandardDeviationAt(level);
        double? variance = (r, big) switch
        {
            ({ } small, { } large) => Square(large) - Square(Math.Min(small, large)) * (1 - 1.0 / count),
            ({ } small, null) => Square(small) / count,
            (null, { } large) => Square(large),
            _ => null,
        };
        return variance / Square(level) + Square(half.Deviation / half.Estimate);
    }

    /// <summary>Relative variance of B's ratio over A's.</summary>
    private double? Between()
    {
        if (Precision?.Repeatability is not { } repeatability) return null;
        var (a, b) = (A.Deviation / A.Estimate, B.Deviation / B.Estimate);
        return a * a + b * b - 2 * Correlation * a * b + Lab(A) + Lab(B);

        double Lab(EstimatedHalf half) =>
            Square(repeatability.StandardDeviationAt(half.Measured.Mean) / half.Measured.Mean) / half.Measured.Count;
    }

    private Interval? FactorsThatFit(EstimatedHalf half)
    {
        if (Absolute(half) is not { } variance) return null;
        var reach = Wide * Math.Sqrt(variance);
        return new Interval(half.Ratio / (1 + reach), reach < 1 ? half.Ratio / (1 - reach) : double.PositiveInfinity);
    }

    private static Interval? Around(double ratio, double? variance)
    {
        if (variance is not { } known) return null;
        var factor = Math.Exp(Wide * Math.Sqrt(Math.Max(0, known)));
        return new Interval(ratio / factor, ratio * factor);
    }

    private static string Range(Interval range) => $"{Printed.Range(range, Printed.Ratio)} at 95 %";

    private static string Number(double value) => Printed.Ratio(value);

    private static double Square(double x) => x * x;
}

/// <summary>One half's estimate beside what the laboratory measured.</summary>
/// <param name="Side">Which half.</param>
/// <param name="Estimate">The estimate in IBU, above zero.</param>
/// <param name="Deviation">Its standard uncertainty in IBU, zero or more.</param>
/// <param name="Measured">The laboratory's results in BU.</param>
public sealed record EstimatedHalf(Side Side, double Estimate, double Deviation, Replicates Measured)
{
    /// <summary>The estimate in IBU.</summary>
    public double Estimate { get; init; } = Guard.Positive(Estimate);

    /// <summary>Its standard uncertainty in IBU.</summary>
    public double Deviation { get; init; } = Guard.NotNegative(Deviation);

    /// <summary>The estimate's 95 % interval.</summary>
    public Interval EstimateInterval => new(Math.Max(0, Estimate - 1.96 * Deviation), Estimate + 1.96 * Deviation);

    /// <summary>Measured over estimated.</summary>
    public double Ratio => Measured.Mean / Estimate;
}
