using System.Globalization;
using SplitBatch.Bitterness;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Trials;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// The write-up of a trial, assembled from its findings: the words cannot be stronger than the evidence, because each
/// sentence with a number is a claim, and the writer's own paragraphs are shown as they are.
/// </summary>
public static class TrialReport
{
    /// <summary>The write-up as far as the trial's folder allows it.</summary>
    /// <param name="trial">The trial.</param>
    /// <example><code>TrialReport.Of(trial).SaveTo("my-trial/write-up")</code></example>
    public static Document Of(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var verdict = trial.Verdict();
        var doubt = verdict.Evidence.Doses is { } doses ? Doubt(doses) : null;
        return new Document(
            trial.Title,
            [
                .. Opening(trial, verdict),
                .. Changed(trial),
                .. Doses(verdict, doubt),
                .. LabValues(trial, verdict, doubt),
                .. PanelChapter.Of(trial, verdict),
                .. Closing(trial, verdict),
                .. Appendix(trial),
            ])
        {
            Subtitle = trial.Description.Invented
                ? "An invented example: it shows how the work is done and is not a finding about beer."
                : "",
            Summary = TrialSummary.Of(trial, verdict),
        };
    }

    private static IEnumerable<Block> Opening(Trial trial, Verdict verdict)
    {
        yield return new Callout("Verdict") { Claims = [verdict.HeadlineClaim] };
        yield return new Heading("The question");
        yield return trial.Question;
        if (trial.Description.Why.Length > 0) yield return trial.Description.Why;
        if (trial.Note("introduction") is { } own) yield return new Prose(own);
    }

    private static IEnumerable<Block> Changed(Trial trial)
    {
        yield return new Heading("What was changed, and what was held equal");
        yield return trial.TableOfChanges();
        if (trial.Note("method") is { } own) yield return new Prose(own);
        if (trial.HasKettle || trial.Lots.Count > 0) yield return new Heading("The recipe and the process", 3);
        if (trial.HasKettle) yield return trial.TableOfProcess();
        if (trial.Lots.Count > 0) yield return trial.LotsOnBrewDay.Table();
        if (trial.BatchLog.Entries.Count == 0) yield break;
        yield return new Heading("What the batch log says", 3);
        yield return trial.Parity.Table();
    }

    private static IEnumerable<Block> Doses(Verdict verdict, DoseUncertainty? doubt)
    {
        if (verdict.Evidence.Doses is not { } doses || doubt is null) yield break;
        yield return new Heading("The two charges");
        yield return new Claims(verdict.About(Subject.Doses));
        yield return doses.Chart().ReadAs(verdict.About(Subject.Doses));
        yield return doses.Table() with { Caption = $"What was weighed, and its worth by {doses.A.Estimate.Model.Name}'s formula" };
        yield return doses.WhatComesWithIt();
        yield return new Heading("How sure the doses are", 3);
        yield return doses.ChartOfModels();
        yield return doubt.Chart();
        yield return doubt.Table();
    }

    /// <summary>
    /// How sure the doses are; the seed and the number of draws are part of the write-up, so that it comes out the same again.
    /// </summary>
    private static DoseUncertainty Doubt(ChargeMatch doses) => DoseUncertainty.Of(doses, seed: 2026, draws: 200_000);

    private static IEnumerable<Block> LabValues(Trial trial, Verdict verdict, DoseUncertainty? doubt)
    {
        if (verdict.Evidence.Bitterness is not { } bitterness) yield break;
        yield return new Heading("What the lab measured");
        yield return new Claims(verdict.About(Subject.Lab));
        yield return bitterness.Chart().ReadAs(verdict.Findings.Where(finding => finding is LabMeans or LabDifference).Select(Claim.Of));
        yield return trial.Lab.CompareAll().Table();
        if (trial.Lab.TableOfOutliers() is { Rows.Count: > 0 } replicates) yield return replicates;
        if (trial.Lab.TableOfHistory() is { Rows.Count: > 0 } corrections) yield return corrections;
        if (verdict.Evidence.Doses is { } doses) yield return doses.ChartAgainst(bitterness, doubt);
    }

    private static IEnumerable<Block> Closing(Trial trial, Verdict verdict)
    {
        if (trial.Note("discussion") is { } own)
        {
            yield return new Heading("In the brewer's words");
            yield return new Prose(own);
        }

        yield return new Heading("What this does not show");
        foreach (var claim in verdict.DoesNotShow) yield return claim;
        yield return new Heading("What limits it");
        foreach (var claim in verdict.Limitations) yield return claim;
        yield return new Heading("What to test next");
        foreach (var claim in verdict.Next) yield return claim;
    }

    private static IEnumerable<Block> Appendix(Trial trial)
    {
        yield return new Heading("How to repeat it");
        yield return "Brew both halves from one wort, change the one variable, dose by the table above, and log both halves alike. Send "
            + "both to one lab in one run under sample numbers. Declare the panel's plan before pouring, serve by the sealed key, and "
            + "count by it.";
        foreach (var caution in Cautions.All) yield return new Callout(caution.Step, string.Join(" ", caution.Sentences));
        yield return new Heading("Data and method");
        if (trial.Lab.Results.Count > 0) yield return trial.Lab.Table();
        foreach (var panel in trial.Panels.Where(panel => panel.HasCount))
        {
            var bias = panel.Bias;
            if (bias.Checks.Count > 0) yield return bias.Table();
        }

        yield return new Heading("Where every number comes from", 3);
        yield return new Ledger();
        yield return new Heading("Files, version and seeds", 3);
        yield return TableOf.Each(trial.InputFiles, "The files that this was made from")
            .Text("file", file => file.Name)
            .Text("SHA-256", file => file.Sha256)
            .Note(Made(trial))
            .ToTable();
    }

    private static string Made(Trial trial)
    {
        var version = typeof(Trial).Assembly.GetName().Version?.ToString(3) ?? "unknown";
        var seeds =
            string.Join(", ", trial.Panels
                .Select(panel => string.Create(CultureInfo.InvariantCulture,
                    $"{panel.Name} {(panel.Serving?.Seed ?? panel.Plan.Seed) switch { { } seed => seed, null => "in its key" }}")));
        return $"Made with SplitBatch {version}." + (seeds.Length > 0 ? $" Seeds of the serving plans: {seeds}." : "");
    }
}
