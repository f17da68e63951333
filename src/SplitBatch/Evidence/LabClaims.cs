using SplitBatch.Bitterness;
using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>What may be said of the lab's bitterness values, each number in the ledger.</summary>
internal static class LabClaims
{
    private const string Standard = "critical difference of two means by ISO 5725-6";
    private static readonly string[] Sources = ["lab-returns.csv", "trial.json"];

    public static IEnumerable<Claim> Of(LabComparison lab, ChargeMatch? doses)
    {
        yield return new Claim("lab.means", MeansSentence(lab), "arithmetic means", Sources);
        yield return DifferenceClaim(lab);
        if (doses is not null)
        {
            var offA = 100 * (lab.A.Mean / doses.A.Bitterness.Value - 1);
            var offB = 100 * (lab.B.Mean / doses.B.Bitterness.Value - 1);
            yield return new Claim(
                "lab.estimate",
                AgainstEstimate(offA, offB),
                $"lab mean over the estimate by {doses.A.Estimate.Model.Name}",
                [.. Sources, "charges.csv", "hops.csv"]);
        }
    }

    private static FormattableString MeansSentence(LabComparison lab)
    {
        var (a, b, n, m) = (lab.A.Mean, lab.B.Mean, lab.A.Count, lab.B.Count);
        if (n == 1 && m == 1) return $"The lab measured {a:0.0} BU in half A and {b:0.0} BU in half B, by a single reading of each.";
        if (n == m) return $"The lab measured {a:0.0} BU in half A and {b:0.0} BU in half B (each the mean of {n} readings).";
        return $"The lab measured {a:0.0} BU in half A and {b:0.0} BU in half B (the means of {n} and {m} readings).";
    }

    private static FormattableString AgainstEstimate(double offA, double offB) => (Math.Round(offA), Math.Round(offB)) switch
    {
        (< 0, < 0) => $"The lab found {-offA:0} % less bitterness than estimated in half A and {-offB:0} % less in half B.",
        (> 0, > 0) => $"The lab found {offA:0} % more bitterness than estimated in half A and {offB:0} % more in half B.",
        _ => $"Against the estimates, the lab's values are {offA:+0;-0;0} % in half A and {offB:+0;-0;0} % in half B.",
    };

    /// <summary>What the replicates say about themselves: values and spreads that are flagged, and runs that did not repeat as stated.</summary>
    public static IEnumerable<Claim> OfReplicates(LabReturn lab)
    {
        var flagged = lab.Analytes.SelectMany(lab.Outliers).Where(finding => finding.IsFlagged);
        foreach (var (i, finding) in flagged.Index())
        {
            var what = finding.Status == OutlierStatus.Outlier ? "an outlier" : "a straggler";
            var values = string.Join(" and ", finding.Values.Select(finding.Analyte.Format));
            var subject = finding.IsAboutSpread ? $"the spread of {values}" : values;
            yield return new Claim(
                $"lab.outlier.{i + 1}",
                $"In sample {finding.Label}, {subject} of {finding.Analyte.Name} is {what} ({finding.Test}: {finding.Statistic:0.000}; critical {finding.Critical5:0.000} at {5} % and {finding.Critical1:0.000} at {1} %). It is kept in every mean.",
                "outlier tests as in ISO 5725-2",
                Sources[0]);
        }

        foreach (var (i, check) in lab.Analytes.SelectMany(lab.RangeChecks).Where(check => !check.IsAcceptable).Index())
        {
            yield return new Claim(
                $"lab.range.{i + 1}",
                $"In sample {check.Sample.Label}, {check.Sample.Count} replicates of {check.Sample.Analyte.Name} span {check.Sample.Range:0.0##} {check.Sample.Analyte.Unit}, more than the {check.CriticalRange:0.0##} that the stated repeatability allows: the run did not repeat as well as the lab states.",
                "critical range by ISO 5725-6",
                Sources);
        }
    }

    private static Claim DifferenceClaim(LabComparison lab)
    {
        var size = Math.Abs(lab.Difference);
        var percent = lab.PercentOfMean ?? 0;
        return (lab.Judgement, lab.CriticalDifference) switch
        {
            (Judgement.Exceeds, { } critical) => new Claim(
                "lab.difference",
                $"The halves differ by {size:0.0} BU, {percent:0.#} % of their mean; two such means of one and the same beer would lie within {critical:0.00} BU of each other in {95} cases of {100}, so the beers differ in measured bitterness.",
                Standard, Sources),
            (Judgement.Within, { } critical) => new Claim(
                "lab.difference",
                $"The halves differ by {size:0.0} BU, {percent:0.#} % of their mean; two such means of one and the same beer would lie within {critical:0.00} BU of each other in {95} cases of {100}, so the lab does not tell the halves apart, which does not prove them equal.",
                Standard, Sources),
            (Judgement.Exceeds, null) => new Claim(
                "lab.difference",
                $"The halves differ by {size:0.0} BU, {percent:0.#} % of their mean, more than the method's own scatter however the lab's precision figure is read.",
                Standard, Sources),
            (Judgement.DependsOnReading, _) => new Claim(
                "lab.difference",
                $"The halves differ by {size:0.0} BU, {percent:0.#} % of their mean; whether that is more than the method's own scatter depends on what the lab's precision figure means, and the lab did not say.",
                Standard, Sources),
            _ => new Claim(
                "lab.difference",
                $"The halves differ by {size:0.0} BU, {percent:0.#} % of their mean; what is known of the method's precision does not settle whether that is more than its own scatter.",
                Standard, Sources),
        };
    }
}
