using SplitBatch.Bitterness;
using SplitBatch.BrewDay;
using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>What limits a verdict, from the batch log, the lab return and the panels.</summary>
internal static class LimitationsOf
{
    public static IEnumerable<Claim> Trial(Verdict verdict)
    {
        var evidence = verdict.Evidence;
        if (evidence.Invented) yield return Claim.InWords("limit.invented", "The data are invented to show how the work is done; nothing here is a finding about beer.", "said in trial.json", "trial.json");
        yield return Claim.InWords("limit.batches", "One batch of each half was brewed. Two batches of one recipe also differ a little, so a difference cannot be put down to the variable alone until the trial is repeated.");
        foreach (var confound in evidence.HopConfounds)
        {
            yield return Claim.InWords($"limit.hops.{confound.Difference}", $"The hop lots differ in more than the variable. {confound}", "comparison of the two lots", "hops.csv");
        }

        foreach (var claim in OfTheBatches(evidence.Parity)) yield return claim;
        if (evidence.Bitterness is null) yield return Claim.InWords("limit.lab", "No lab return is logged, so it is not known how bitter the halves were.");
        else if (evidence.Bitterness.Judgement is Judgement.DependsOnReading or Judgement.NotJudged)
        {
            yield return Claim.InWords("limit.precision", "The lab's precision is not known well enough to say what its difference means.", "trial.json", "trial.json");
        }

        else if (evidence.Bitterness.Judgement == Judgement.Exceeds && evidence.Doses is { } doses && AimAtOneBitterness(doses))
        {
            yield return Claim.InWords("limit.bitterness", "The two doses were estimated to be equally bitter, and the lab found that the beers are not. What tasters notice may be that difference in bitterness and not the variable itself.", "estimate beside the lab's values", "charges.csv", "hops.csv", "lab-returns.csv");
        }

        foreach (var claim in OfTheSamples(evidence)) yield return claim;
        if (evidence.Panels.Count == 0) yield return Claim.InWords("limit.panel", "No panel has been counted.");
        foreach (var panel in evidence.Panels)
        {
            var id = $"limit.panel.{panel.Plan.Name}";
            var sources = panel.Sources;
            foreach (var (i, departure) in panel.Departures.Index())
            {
                yield return Claim.InWords($"{id}.departure.{i + 1}", $"Panel {panel.Plan.Name} departed from its plan. {char.ToUpperInvariant(departure.ToString()[0])}{departure.ToString()[1..]}", "plan against practice", [.. sources, "trial.json"]);
            }

            foreach (var (i, check) in (panel.Bias?.Checks.Where(check => check.BiasShown) ?? []).Index())
            {
                yield return Claim.InWords($"{id}.bias.{i + 1}", $"Panel {panel.Plan.Name}, a bias: {check}.", "chi-square by random dealing, corrected by Holm's method", sources);
            }

            foreach (var (i, remark) in panel.Remarks.Index())
            {
                yield return Claim.InWords($"{id}.remark.{i + 1}", $"Panel {panel.Plan.Name}: {remark}", "count of ballots", sources);
            }
        }

        if (evidence.Panels.Count > 1 && evidence.Together is null)
        {
            yield return Claim.InWords("limit.panels", "The panels stand side by side and are not combined: the trial declares no method for it, or they do not allow one. The verdict rests on the main panel.");
        }

        if (evidence.Panels.Count > 0) yield return Claim.InWords("limit.people", "The panel speaks for people like those who sat at it, with beer served as it was served.");
    }

    /// <summary>Whether the estimates differ by less than a twentieth: nearer than that nobody weighs hops for two different bitternesses.</summary>
    private static bool AimAtOneBitterness(ChargeMatch doses) => Math.Abs(doses.Mismatch) < 0.05 * doses.A.Bitterness.Value;

    private static IEnumerable<Claim> OfTheSamples(TrialEvidence evidence)
    {
        string[] sources = ["lab-returns.csv", "batch-log.csv", "charges.csv"];
        if (evidence.Samples is { IsSuspicious: true } swap)
        {
            yield return Claim.InWords("limit.samples", swap.ToString(), "the lab's differences against those foretold by the batch log and the doses", sources);
        }

        foreach (var analyte in evidence.Lab?.Analytes ?? [])
        {
            if (evidence.Lab!.MeasuredBy(analyte) is not { Count: > 1 } several) continue;
            var used = evidence.Lab.ComparedBy(analyte);
            yield return Claim.InWords(
                $"limit.labs.{analyte.Name}",
                $"More than one measured {analyte.Name}: {string.Join(", ", several)}. {(used is null ? "None of them measured both halves, so what differs between laboratories counts with what differs between beers." : $"The halves are compared by the results of {used} alone.")}",
                "lab and absorbance in lab-returns.csv",
                sources[0]);
        }

        var readings = evidence.Lab?.Results.Where(result => result.Reading is not null).ToList() ?? [];
        if (readings.Count == 0) yield break;
        yield return Claim.InWords("limit.own-reading", "The bitterness was read on an instrument of one's own and not by a laboratory.", "absorbance in lab-returns.csv", sources[0]);
        var warnings = readings.SelectMany(result => result.Reading!.Warnings.Select(text => (Text: text, Row: $"lab-returns.csv, id {result.Id}"))).GroupBy(warning => warning.Text, warning => warning.Row);
        foreach (var (i, warning) in warnings.Index()) yield return Claim.InWords($"limit.own-reading.{i + 1}", warning.Key, "what the method was made for", warning);
    }

    private static IEnumerable<Claim> OfTheBatches(ParityCheck? parity)
    {
        const string Method = "comparison of the two halves, line by line";
        if (parity is null)
        {
            yield return Claim.InWords("limit.log", "No batch log is kept, so it is not known whether the halves differ in anything but the variable.");
            yield break;
        }

        foreach (var line in parity.Confounds)
        {
            yield return Claim.InWords($"limit.confound.{line.Quantity}", line.Remark, Method, line.Rows.Select(row => $"batch-log.csv, id {row}"));
        }

        if (parity.NotMeasured is { Count: > 0 } gaps)
        {
            yield return Claim.InWords("limit.unmeasured", $"Not measured, or on one half only: {string.Join(", ", gaps.Select(line => line.Quantity))}. Nobody can say whether these were equal.", Method, "batch-log.csv");
        }
    }
}
