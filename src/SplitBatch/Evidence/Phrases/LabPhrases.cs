using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;

namespace SplitBatch.Evidence.Phrases;

/// <summary>What the lab measured, and what its method can tell apart.</summary>
internal static class LabPhrases
{
    public static Sentence Of(LabMeans finding)
    {
        var (a, b, n, m) = (finding.Comparison.A, finding.Comparison.B, finding.Comparison.A.Count, finding.Comparison.B.Count);
        var measured = Sentence.Of($"The lab measured {Value(a.Analyte, a.Mean)} in half A and {Value(b.Analyte, b.Mean)} in half B");
        return (n, m) switch
        {
            (1, 1) => Sentence.Of($"{measured}, by a single reading of each."),
            _ when n == m => Sentence.Of($"{measured}, each the mean of {Printed.Count(n, "reading")}."),
            _ => Sentence.Of($"{measured}, the means of {Printed.Count(n)} and {Printed.Count(m, "reading")}."),
        };
    }

    public static Sentence Of(LabDifference finding) => Sentence.Of($"{Apart(finding.Comparison)}; {Judged(finding)}.");

    public static Sentence Of(AnalyteApart finding) => Sentence.Of(
        $"In {new Name(finding.Comparison.Analyte.Name)} {Halves(finding.Comparison)}, more than the method's own scatter: what tasters "
            + $"notice may be that difference and not the variable itself.");

    public static Sentence Of(LabAgainstEstimate finding)
    {
        var (a, b) = (Printed.Percent(Math.Abs(finding.OffA)), Printed.Percent(Math.Abs(finding.OffB)));
        return (finding.OffA, finding.OffB) switch
        {
            (< 0, < 0) => Sentence.Of($"The lab found {a} less bitterness than estimated in half A and {b} less in half B."),
            (> 0, > 0) => Sentence.Of($"The lab found {a} more bitterness than estimated in half A and {b} more in half B."),
            _ => Sentence.Of($"The lab found {a} {More(finding.OffA)} bitterness than estimated in half A and {b} {More(finding.OffB)} "
                + $"in half B."),
        };
    }

    public static Sentence Of(ReplicateFlagged finding)
    {
        var outlier = finding.Outlier;
        var values = Sentence.Join(" and ", outlier.Values.Select(value => Sentence.Of($"{Value(outlier.Analyte, value)}")));
        var subject = outlier.IsAboutSpread ? Sentence.Of($"the spread of {values}") : values;
        var what = outlier.Status == OutlierStatus.Outlier ? "an outlier" : "a straggler";
        return Sentence.Of($"In sample {new Name(outlier.Label)}, {subject} of {new Name(outlier.Analyte.Name)} is {what} "
            + $"({new Name(outlier.Test)}: {Printed.Statistic(outlier.Statistic, outlier.Nearest)}; critical "
            + $"{Printed.Statistic(outlier.Critical5, outlier.Statistic)} at {Printed.Chosen(5, "%")} and "
            + $"{Printed.Statistic(outlier.Critical1, outlier.Statistic)} at {Printed.Chosen(1, "%")}). It is kept in every mean.");
    }

    public static Sentence Of(ReplicatesTooWide finding)
    {
        var (sample, analyte) = (finding.Check.Sample, finding.Check.Sample.Analyte);
        return Sentence.Of($"In sample {new Name(sample.Label)}, {Printed.Count(sample.Count, "replicate")} of {new Name(analyte.Name)} "
            + $"span {Value(analyte, sample.Range, finding.Check.CriticalRange)}, more than the "
            + $"{Value(analyte, finding.Check.CriticalRange, sample.Range)} that the stated repeatability allows: the run did not repeat "
            + $"as well as the lab states.");
    }

    public static Sentence Of(SeveralMeasured finding)
    {
        var used = finding.Used is { } name
            ? Sentence.Of($"The halves are compared by the results of {new Name(name)} alone.")
            : Sentence.Of($"None of them measured both halves, so what differs between laboratories counts with what differs "
                + $"between beers.");
        return Sentence.Of($"More than one measured {new Name(finding.Analyte.Name)}: "
            + $"{new Name(string.Join(", ", finding.Names))}. {used}");
    }

    public static Sentence Of(SamplesSuspicious finding) => Sentence.Of($"{new Quote(finding.Check.ToString())}");

    public static Sentence Of(ReadingDoubtful finding) => Sentence.Of($"{new Quote(finding.Warning)}");

    /// <summary>"half B measured 2.3 BU more bitter", for a headline; other analytes by name.</summary>
    public static Sentence Gap(LabComparison comparison, string nameA, string nameB)
    {
        var (more, size) = (comparison.Difference > 0 ? nameA : nameB, Value(comparison.Analyte, Math.Abs(comparison.Difference)));
        return comparison.Analyte.Equals(Analyte.Bitterness)
            ? Sentence.Of($"the {new Name(more)} half measured {size} more bitter")
            : Sentence.Of($"the {new Name(more)} half measured {size} more in {new Name(comparison.Analyte.Name)}");
    }

    private static Sentence Apart(LabComparison comparison)
    {
        var percent = comparison.PercentOfMean is { } share
            ? Sentence.Of($", {Printed.Percent(share / 100)} of their mean")
            : Sentence.Empty;
        return Sentence.Of($"{Halves(comparison).Capital}{percent}");
    }

    private static Sentence Halves(LabComparison comparison) =>
        Sentence.Of($"the halves differ by {Value(comparison.Analyte, Math.Abs(comparison.Difference), comparison.CriticalDifference)}");

    private static Sentence Judged(LabDifference finding)
    {
        var name = new Name(finding.Comparison.Analyte.Name);
        return finding.Outcome switch
        {
            LabOutcome.Apart => Sentence.Of($"{Scatter(finding.Comparison)}, so the halves differ in {name} as this method measures it"),
            LabOutcome.NotToldApart =>
                Sentence.Of($"{Scatter(finding.Comparison)}, so the lab does not tell the halves apart, which does not prove them equal"),
            LabOutcome.ApartHoweverRead =>
                Sentence.Of($"that is more than the method's own scatter however the lab's precision figure is read, so the halves differ "
                    + $"in {name} as this method measures it"),
            LabOutcome.NotToldApartHoweverRead =>
                Sentence.Of($"that is no more than the method's own scatter however the lab's precision figure is read, so the lab does "
                    + $"not tell the halves apart, which does not prove them equal"),
            LabOutcome.DependsOnReading =>
                Sentence.Of($"whether that is more than the method's own scatter depends on what the lab's precision figure means, and "
                    + $"the lab did not say"),
            LabOutcome.BelowAnUpperBound =>
                Sentence.Of($"the precision that is known bounds the method's own scatter from above only, at "
                    + $"{Value(finding.Comparison.Analyte, finding.Comparison.CriticalDifference!.Value)}, which settles nothing"),
            LabOutcome.OtherMethods =>
                Sentence.Of($"they were measured by different methods, whose values cannot be compared, so the difference is not judged"),
            LabOutcome.RunsUnknown =>
                Sentence.Of($"they were measured in separate runs, and the laboratory's spread from run to run is not stated, so the "
                    + $"difference is not judged"),
            LabOutcome.LaboratoriesUnknown =>
                Sentence.Of($"they were measured by two laboratories, and the spread between laboratories is not stated, so the "
                    + $"difference is not judged"),
            _ => Sentence.Of($"what is known of the method's precision does not settle whether that is more than its own scatter"),
        };
    }

    private static Sentence Scatter(LabComparison comparison) => comparison.OverRuns is { Mean.Interval: var over } runs
        ? Sentence.Of($"over {Printed.Count(runs.Differences.Count, "run")} that each hold both halves, half B minus half A lies between "
            + $"{Signed(comparison, -over.High)} and {Signed(comparison, -over.Low)} ({Printed.ChosenPercent(over.Level)} confidence)")
        : Sentence.Of(
        $"two such means of the same beer, measured {Measured(comparison.Circumstance)}, would lie within "
            + $"{Value(comparison.Analyte, comparison.CriticalDifference!.Value, Math.Abs(comparison.Difference))} of each other in "
            + $"{Printed.Chosen(95)} cases out of {Printed.Chosen(100)}");

    private static Printed Value(Analyte analyte, double value, double? against = null) =>
        Printed.Fixed(value, analyte.Decimals, analyte.Unit == analyte.Name ? "" : analyte.Unit, against);

    private static string Measured(LabCircumstance circumstance) => circumstance switch
    {
        LabCircumstance.SeparateRuns => "in separate runs",
        LabCircumstance.TwoLaboratories => "by two laboratories",
        _ => "in one run",
    };

    private static Printed Signed(LabComparison comparison, double value) => Value(comparison.Analyte, value).WithSign;

    private static string More(double off) => off < 0 ? "less" : "more";
}
