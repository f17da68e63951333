using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Lab;

/// <summary>Two beers by one analyte: the measured difference against the precision of the method.</summary>
/// <remarks>
/// The precision is taken at the level halfway between the two means. A difference within the critical difference is
/// never called "the same": <see cref="Interval"/> says what it still allows.
/// </remarks>
public sealed record LabComparison
{
    private LabComparison(Replicates a, Replicates b, IEnumerable<LabPrecision> precisions, StatedPrecision? stated)
    {
        if (!a.Analyte.Equals(b.Analyte))
        {
            throw new ArgumentException($"{a.Label} holds {a.Analyte} and {b.Label} holds {b.Analyte}; only like can be compared "
                + $"with like.", nameof(b));
        }

        A = a;
        B = b;
        Stated = stated;
        Circumstance = LabCircumstances.Of(a, b);
        OverRuns = Circumstance == LabCircumstance.EachRunHoldsBoth
            ? PairedRuns.Of([.. a.Runs.OrderBy(run => run.Key, StringComparer.OrdinalIgnoreCase).Select(run => run.Value)],
                [.. b.Runs.OrderBy(run => run.Key, StringComparer.OrdinalIgnoreCase).Select(run => run.Value)])
            : null;
        Readings = [.. precisions.Select(precision => PrecisionReading.Of(precision, a, b, Circumstance))];
    }

    /// <summary>The results of the first beer.</summary>
    public Replicates A { get; }

    /// <summary>The results of the second beer.</summary>
    public Replicates B { get; }

    /// <summary>What the laboratory said about its precision, where its meaning was not known.</summary>
    public StatedPrecision? Stated { get; }

    /// <summary>Each reading of the precision and what follows from it; one only where its meaning is known.</summary>
    public IReadOnlyList<PrecisionReading> Readings { get; }

    /// <summary>Where, when and by which method the two means were measured, as far as it is told.</summary>
    public LabCircumstance Circumstance { get; }

    /// <summary>The difference over several runs that each hold both halves; null for other circumstances.</summary>
    public PairedRuns? OverRuns { get; }

    /// <summary>What was measured.</summary>
    public Analyte Analyte => A.Analyte;

    /// <summary>
    /// Mean of A less mean of B, in the analyte's unit; over runs that each hold both, the mean of the runs' differences.
    /// </summary>
    public double Difference => OverRuns?.Mean.Mean ?? A.Mean - B.Mean;

    /// <summary>The mean of the two means.</summary>
    public double Mean => (A.Mean + B.Mean) / 2;

    /// <summary>The size of the difference in percent of <see cref="Mean"/>; null where the mean is zero.</summary>
    public double? PercentOfMean => Mean == 0 ? null : Math.Abs(Difference / Mean) * 100;

    /// <summary>The critical difference at 95 %, where the precision has one meaning and gives one.</summary>
    public double? CriticalDifference =>
        OverRuns is { Mean.Interval: var over } ? (over.High - over.Low) / 2 : Readings is [{ } only] ? only.CriticalDifference : null;

    /// <summary>The differences still credible at 95 %: the measured one, give or take the critical difference.</summary>
    public Interval? Interval => CriticalDifference is { } critical ? new Interval(Difference - critical, Difference + critical) : null;

    /// <summary>
    /// What the replicates alone allow: the difference that two such means of one beer stay within in 95 cases out of 100, by Student's t
    /// on their pooled scatter. Null without replicates of both. It knows only the scatter within the run, and little of that from few
    /// replicates.
    /// </summary>
    public double? LimitFromReplicates
    {
        get
        {
            var freedom = A.Count + B.Count - 2;
            if (A.Count < 2 || B.Count < 2) return null;
            var squares = new[] { A, B }.Sum(one => (one.Count - 1) * one.StandardDeviation!.Value * one.StandardDeviation.Value);
            return StudentT.InvCDF(0, 1, freedom, 0.975) * Math.Sqrt(squares / freedom * (1.0 / A.Count + 1.0 / B.Count));
        }
    }

    /// <summary>What follows; where the readings disagree, that it depends on them.</summary>
    public Judgement Judgement => OverRuns is { Mean.Interval: var over }
        ? over.Contains(0) ? Judgement.Within : Judgement.Exceeds
        : Readings.Select(reading => reading.Judgement).Distinct().ToList() switch
        {
            [] => Judgement.NotJudged,
            [var one] => one,
            _ => Judgement.DependsOnReading,
        };

    /// <summary>Compares two sets of replicates with a precision whose meaning is known.</summary>
    /// <exception cref="ArgumentException">The analytes differ, or repeatability is worse than reproducibility.</exception>
    public static LabComparison Compare(LabPrecision precision, Replicates a, Replicates b)
    {
        ArgumentNullException.ThrowIfNull(precision);
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new(a, b, [precision], null);
    }

    /// <summary>Compares two sets of replicates with one precision figure whose meaning is known.</summary>
    /// <exception cref="ArgumentException">The analytes differ.</exception>
    public static LabComparison Compare(Precision precision, Replicates a, Replicates b) => Compare(LabPrecision.Of(precision), a, b);

    /// <summary>Compares the bitterness of A and B, values in BU from one laboratory.</summary>
    /// <exception cref="ArgumentException">A beer has no value.</exception>
    /// <example><code>LabComparison.Compare(Precision.StandardDeviation(0.6), [22.6, 23.2], [24.9, 25.5])</code></example>
    public static LabComparison Compare(Precision precision, IReadOnlyList<double> a, IReadOnlyList<double> b) =>
        Compare(precision, new Replicates("A", a), new Replicates("B", b));

    /// <summary>Compares two sets of replicates under every reading of a figure whose meaning is not known.</summary>
    /// <exception cref="ArgumentException">The analytes differ.</exception>
    public static LabComparison Compare(StatedPrecision stated, Replicates a, Replicates b)
    {
        ArgumentNullException.ThrowIfNull(stated);
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new(a, b, stated.Readings().Select(LabPrecision.Of), stated);
    }

    /// <summary>Compares the bitterness of A and B, values in BU, under every reading of a figure whose meaning is not known.</summary>
    /// <exception cref="ArgumentException">A beer has no value.</exception>
    public static LabComparison Compare(StatedPrecision stated, IReadOnlyList<double> a, IReadOnlyList<double> b) =>
        Compare(stated, new Replicates("A", a), new Replicates("B", b));

    /// <summary>The result in sentences a reader can repeat.</summary>
    public override string ToString() => $"{Measured()} {Judged()}";

    private string Measured()
    {
        var percent = PercentOfMean is { } p ? $", {Printed.Percent(p / 100)} of their mean" : "";
        return $"{A} and {B} differ by {Analyte.Format(Math.Abs(Difference))}{percent}.";
    }

    private string Judged()
    {
        if (OverRuns is { } runs)
            return $"Over {runs.Differences.Count} runs that each hold both, "
                + $"{(runs.Mean.Interval.Contains(0)
                    ? "the method does not tell them apart; that is not proof that they are the same"
                    : $"they differ in {Analyte.Name} as this method measures it")}.";
        if (Readings is [{ } only]) return Sentence(only);
        if (Readings.Count == 0) return "No precision is stated, so the difference cannot be judged.";
        var exceeds = Readings.Count(reading => reading.Judgement == Judgement.Exceeds);
        var smallest = Readings.Min(reading => reading.CriticalDifference);
        var largest = Readings.Max(reading => reading.CriticalDifference);
        var span = smallest is { } low && largest is { } high
            ? $" (critical differences from {Analyte.Format(low)} to {Analyte.Format(high)})"
            : "";
        var count = $"The stated precision is {Stated}. It can be read in {Readings.Count} ways{span}: ";
        return count + (Judgement switch
        {
            Judgement.Exceeds => "the difference is larger than the method's own scatter under all of them.",
            Judgement.Within => "the difference is within the method's own scatter under all of them.",
            Judgement.NotJudged => "none of them settles whether the difference is larger than the method's own scatter.",
            _ => $"the difference is larger than the method's own scatter under {exceeds} of them and not shown to be so under the "
                + $"others. Ask the laboratory which it means.",
        });
    }

    private string Sentence(PrecisionReading reading)
    {
        if (reading.CriticalDifference is not { } critical) return reading.Remark;
        var remark = reading.Remark.Length > 0 ? " " + reading.Remark : "";
        var most = reading.IsUpperBound ? "at most " : "";
        var limit = $"With {reading.Precision}, two such results on the same beer lie within {most}{Analyte.Format(critical)} of each "
            + $"other in 95 cases out of 100";
        return limit + reading.Judgement switch
        {
            Judgement.Exceeds => $": the difference is larger, so the beers differ in {Analyte.Name} as this method measures it.{remark}",
            Judgement.Within => $": the difference is no larger, so this method does not tell the beers apart; that is not proof that "
                + $"they are the same.{remark}",
            _ => $": the difference is no larger than that upper bound, which settles nothing.{remark}",
        };
    }
}
