using SplitBatch.Bitterness;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>What was found in the lab's return.</summary>
internal static class LabFindings
{
    private static readonly string[] Sources = ["lab-returns.csv", "trial.json"];
    private static readonly string[] Compared = ["lab-returns.csv", "batch-log.csv", "charges.csv"];

    public static IEnumerable<Finding> Results(TrialEvidence evidence)
    {
        if (evidence.Bitterness is { } lab)
        {
            yield return new LabMeans(lab) { Method = "arithmetic means", Sources = Sources };
            yield return new LabDifference(lab)
            {
                IsTheVariable = evidence.IsTheVariable(Analyte.Bitterness.Name),
                Method = How(lab),
                Sources = Sources,
            };
            if (evidence.Doses is { } doses) yield return Against(lab, doses);
        }

        if (evidence.Lab is not { } all) yield break;
        foreach (var (i, outlier) in all.Analytes.SelectMany(all.Outliers).Where(outlier => outlier.IsFlagged).Index())
        {
            yield return new ReplicateFlagged(i + 1, outlier) { Method = "outlier tests as in ISO 5725-2", Sources = [Sources[0]] };
        }

        foreach (var (i, check) in all.Analytes.SelectMany(all.RangeChecks).Where(check => !check.IsAcceptable).Index())
        {
            yield return new ReplicatesTooWide(i + 1, check) { Method = "critical range by ISO 5725-6", Sources = Sources };
        }
    }

    public static IEnumerable<Finding> Limits(TrialEvidence evidence)
    {
        switch (evidence.Bitterness?.Judgement)
        {
            case null when evidence.Lab is null:
                yield return new StandingLimit(Subject.Lab, StandingLimitKind.NoLabReturn, "lab");
                break;
            case null:
                yield return new StandingLimit(Subject.Lab, StandingLimitKind.NoBitterness, "lab")
                {
                    Method = "sample and analyte in lab-returns.csv",
                    Sources = Sources,
                };
                break;
            case Judgement.NotJudged
                when evidence.Bitterness is { CriticalDifference: null, Circumstance: LabCircumstance.OtherMethods
                    or LabCircumstance.SeparateRuns or LabCircumstance.TwoLaboratories }:
                yield return new StandingLimit(Subject.Lab, StandingLimitKind.NotComparable, "comparable")
                {
                    Method = "lab, method, run and day in lab-returns.csv",
                    Sources = Sources,
                };
                break;
            case Judgement.DependsOnReading or Judgement.NotJudged:
                yield return new StandingLimit(Subject.Lab, StandingLimitKind.PrecisionUnclear, "precision")
                {
                    Method = "trial.json",
                    Sources = ["trial.json"],
                };
                break;
            case Judgement.Exceeds when evidence.Doses is { } doses && AimAtOneBitterness(doses)
                && !evidence.IsTheVariable(Analyte.Bitterness.Name):
                yield return new StandingLimit(Subject.Lab, StandingLimitKind.DosedAlikeMeasuredApart, "bitterness")
                {
                    Method = "estimate beside the lab's values",
                    Sources = ["charges.csv", "hops.csv", "lab-returns.csv"],
                };
                break;
        }

        if (evidence.Bitterness is { Circumstance: LabCircumstance.RunNotTold, CriticalDifference: not null })
        {
            yield return new StandingLimit(Subject.Lab, StandingLimitKind.RunNotTold, "run")
            {
                Method = "run in lab-returns.csv",
                Sources = [Sources[0]],
            };
        }

        if (evidence.Samples is { IsSuspicious: true } swap)
        {
            yield return new SamplesSuspicious(swap)
            {
                Method = "the lab's differences against those expected from the batch log and the doses",
                Sources = Compared,
            };
        }

        if (evidence.Lab is not { } lab) yield break;
        foreach (var analyte in lab.Analytes)
        {
            if (lab.MeasuredBy(analyte) is { Count: > 1 } several)
            {
                yield return new SeveralMeasured(analyte, several, lab.ComparedBy(analyte))
                {
                    Method = "lab and absorbance in lab-returns.csv",
                    Sources = [Sources[0]],
                };
            }
        }

        foreach (var other in lab.CompareAll()
            .Where(one => one.Judgement == Judgement.Exceeds && !one.Analyte.Equals(Analyte.Bitterness)
                && !evidence.IsTheVariable(one.Analyte.Name)))
        {
            yield return new AnalyteApart(other) { Method = "critical difference of two means by ISO 5725-6", Sources = Sources };
        }

        foreach (var limit in OfReadings(lab)) yield return limit;
    }

    /// <summary>
    /// Whether the estimates differ by less than a twentieth: nearer than that nobody weighs hops for two different bitternesses.
    /// </summary>
    private static bool AimAtOneBitterness(ChargeMatch doses) => Math.Abs(doses.Mismatch) < 0.05 * doses.A.Bitterness.Value;

    private static string How(LabComparison lab) => lab.Circumstance switch
    {
        LabCircumstance.EachRunHoldsBoth => "Student's t over the runs' differences",
        LabCircumstance.SeparateRuns => "critical difference of two means from separate runs, by intermediate precision as in ISO 5725-3",
        _ => "critical difference of two means by ISO 5725-6",
    };

    private static LabAgainstEstimate Against(LabComparison lab, ChargeMatch doses) => new()
    {
        OffA = (lab.A.Mean / doses.A.Bitterness.Value) - 1, OffB = (lab.B.Mean / doses.B.Bitterness.Value) - 1,
        Method = $"lab mean over the estimate by {doses.A.Estimate.Model.Name}", Sources = [.. Sources, "charges.csv", "hops.csv"],
    };

    private static IEnumerable<Finding> OfReadings(LabReturn lab)
    {
        var readings = lab.Results.Where(result => result.Reading is not null).ToList();
        if (readings.Count == 0) yield break;
        yield return new StandingLimit(Subject.Lab, StandingLimitKind.OwnReading, "own-reading")
        {
            Method = "absorbance in lab-returns.csv",
            Sources = [Sources[0]],
        };
        var warnings =
            readings.SelectMany(result => result.Reading!.Warnings.Select(text => (Text: text, Row: $"lab-returns.csv, id {result.Id}")))
                .GroupBy(warning => warning.Text, warning => warning.Row);
        foreach (var (i, warning) in warnings.Index()) yield return new ReadingDoubtful(i + 1, warning.Key)
        {
            Method = "what the method was made for",
            Sources = [.. warning],
        };
    }
}
