using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence;

/// <summary>What was found of the doses and of the halves as brewed.</summary>
internal static class BatchFindings
{
    private const string LineByLine = "comparison of the two halves, line by line";
    private static readonly string[] Sources = ["charges.csv", "hops.csv", "trial.json"];

    public static IEnumerable<Finding> Doses(TrialEvidence evidence)
    {
        if (evidence.Doses is not { } doses) yield break;
        var (a, b) = (doses.A, doses.B);
        var lots = a.Charges.Concat(b.Charges).Select(charge => charge.Lot).Where(lot => lot.Alpha.Fraction > 0)
            .DistinctBy(lot => lot.Name);
        yield return Of(DosesFoundKind.Mass, "mass", $"sum of the charges; alpha acid {string.Join(", ", lots.Select(Basis))}");
        yield return Of(DosesFoundKind.Estimate, "estimate", a.Estimate.Model.Citation);
        yield return Of(DosesFoundKind.Plant, "plant",
            "hop mass less alpha and beta acids; wort held by form, see the table of form factors");

        DosesFound Of(DosesFoundKind kind, string word, string method) =>
            new(kind, word) { Doses = doses, NameA = evidence.NameA, NameB = evidence.NameB, Units = evidence.Units, Method = method,
                Sources = Sources };
    }

    public static IEnumerable<Finding> Limits(TrialEvidence evidence)
    {
        foreach (var confound in evidence.HopConfounds)
            yield return new HopLotsDiffer(confound) { Method = "comparison of the two lots", Sources = ["hops.csv"] };
        if (evidence.Parity is not { } parity)
        {
            yield return new StandingLimit(Subject.Batches, StandingLimitKind.NoBatchLog, "log");
            yield break;
        }

        foreach (var line in parity.Confounds)
        {
            yield return new HalvesDiffer(line)
            {
                Method = LineByLine,
                Sources = [.. line.Rows.Select(row => $"batch-log.csv, id {row}")],
            };
        }

        foreach (var meant in MeantEqual.Of(evidence.HeldEqual, parity).Where(meant => meant.IsContradicted)) yield return meant;
        if (parity.NotMeasured is { Count: > 0 } gaps)
            yield return new NotMeasured([.. gaps.Select(line => line.Quantity)]) { Method = LineByLine, Sources = ["batch-log.csv"] };
    }

    private static string Basis(HopLot lot) =>
        lot.AgedBy is { } model ? $"of {lot.Name} aged to brew day by {model}" : $"of {lot.Name} as assayed";
}
