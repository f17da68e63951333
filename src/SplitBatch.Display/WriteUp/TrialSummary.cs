using SplitBatch.Display.Charts;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Trials;

namespace SplitBatch.Display.WriteUp;

/// <summary>The whole trial in one picture: the question, the doses, the lab, the panel, the verdict.</summary>
public static class TrialSummary
{
    /// <summary>The picture, with the steps that the trial has reached.</summary>
    /// <param name="trial">The trial.</param>
    public static SummaryPicture Of(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return Of(trial, trial.Verdict());
    }

    internal static SummaryPicture Of(Trial trial, Verdict verdict)
    {
        List<SummaryStep> steps = [];
        Add(steps, "The doses",
            Sentence(verdict.Findings.OfType<DosesFound>().FirstOrDefault(finding => finding.Kind == DosesFoundKind.Estimate)),
            verdict.Evidence.Doses is { } doses ? doses.Chart() : null);
        Add(steps, "The lab", Sentence(verdict.Findings.First<LabMeans>()), verdict.Evidence.Bitterness is { } lab ? lab.Chart() : null);
        if (verdict.Main is { } main)
        {
            Add(steps, "The panel", Sentence(verdict.Findings.ResultsAbout(Subject.Panel(main.Plan.Name)).FirstOrDefault()),
                PanelChapter.CountChart(main));
        }

        if (steps.Count == 0) steps.Add(new SummaryStep("The trial", $"It changes one thing: {trial.Description.Variable}."));
        return new SummaryPicture(trial.Question, steps, verdict.Headline)
        {
            SmallPrint = trial.Description.Invented ? "Invented data: an example, not a finding about beer." : "",
        };
    }

    private static void Add(List<SummaryStep> steps, string heading, string? text, Figure? figure)
    {
        if (text is not null) steps.Add(new SummaryStep(heading, text, figure));
    }

    private static string? Sentence(Finding? finding) => finding is null ? null : Claim.Of(finding).Sentence;
}
