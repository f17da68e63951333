using SplitBatch.Display.Tables;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Figures;
using SplitBatch.Evidence;
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
        Add(steps, "The doses", Sentence(verdict, "dose.estimate"), verdict.Evidence.Doses is { } doses ? doses.Chart() : null);
        Add(steps, "The lab", Sentence(verdict, "lab.means"), verdict.Evidence.Bitterness is { } lab ? lab.Chart() : null);
        if (verdict.Main is { } main)
        {
            Add(steps, "The panel", Sentence(verdict, $"panel.{main.Plan.Name}.count"), PanelChapter.CountChart(main));
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

    private static string? Sentence(Verdict verdict, string id) => verdict.Claims.FirstOrDefault(claim => claim.Id == id)?.Sentence;
}
