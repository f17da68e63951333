using System.Globalization;
using System.Text;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Kernel.Pages;

/// <summary>The page that leads to the pages of a run.</summary>
internal static class IndexPage
{
    public static void Write(string folder, IReadOnlyList<NotebookOutcome> outcomes, IReadOnlyList<string> notRun,
        IReadOnlyCollection<TrialFolder> trials) =>
        File.WriteAllText(Path.Combine(folder, "index.html"), Html(outcomes, notRun, trials));

    private static string Html(IReadOnlyList<NotebookOutcome> outcomes, IReadOnlyList<string> notRun,
        IReadOnlyCollection<TrialFolder> trials)
    {
        var page = PageParts.Start("Split-batch notebooks", "list");
        page.Append("<main class=\"list\">\n<h1>Split-batch notebooks</h1>\n");
        var fine = outcomes.Count(o => o.Succeeded);
        page.Append(CultureInfo.InvariantCulture,
            $"<p>{fine} of {outcomes.Count + notRun.Count} notebooks ran from start to end.</p>\n<ol>\n");
        foreach (var outcome in outcomes) Add(page, outcome);
        foreach (var title in notRun)
            page.Append(CultureInfo.InvariantCulture,
                $"<li>{PageParts.Text(title)} <p class=\"note\">Not run, because an earlier notebook stopped.</p></li>\n");
        page.Append("</ol>\n");
        foreach (var trial in trials.Where(t => t.Holds("write-up/write-up.html"))) AddWriteUp(page, trial);
        if (trials.Count > 0) AddTrials(page, trials);
        page.Append(
            "</main>\n<footer><p>Each page can be sent, printed and read by itself, without a network. Its charts are pictures then; with "
            + $"{PageHead.File} beside it they answer the pointer. The .ipynb file beside it is the same notebook with its "
            + $"results.</p></footer>\n");
        return page.Append(PageParts.End).ToString();
    }

    private static void Add(StringBuilder page, NotebookOutcome outcome)
    {
        var title = PageParts.Text(outcome.Title);
        page.Append("<li>").Append(outcome.HasPage ? $"<a href=\"{Uri.EscapeDataString(outcome.Name)}.html\">{title}</a>" : title);
        if (outcome.Summary.Length > 0)
            page.Append(CultureInfo.InvariantCulture, $"<p class=\"note\">{PageParts.Text(outcome.Summary)}</p>");
        if (outcome.Waiting > 0)
            page.Append(CultureInfo.InvariantCulture,
                $"<p class=\"note\">{(outcome.Waiting == 1 ? "One of its cells waits" : $"{outcome.Waiting} of its cells wait")} for "
                + $"data that are not there yet, and {(outcome.Waiting == 1 ? "says" : "say")} which.</p>");
        if (outcome.Failure is { } failure)
            page.Append(CultureInfo.InvariantCulture,
                $"<p class=\"failed\">Stopped at cell {failure.Cell}: {PageParts.Text(failure.Error.Message)}</p>");
        if (outcome.Problem is { } problem)
            page.Append(CultureInfo.InvariantCulture, $"<p class=\"failed\">{PageParts.Text(problem)}</p>");
        page.Append("</li>\n");
    }

    /// <summary>The write-up and every form of it, each by one link.</summary>
    private static void AddWriteUp(StringBuilder page, TrialFolder trial)
    {
        var title = Trial.Open(trial.Path).Title;
        var place = $"{Uri.EscapeDataString(trial.Name)}/write-up";
        page.Append(CultureInfo.InvariantCulture,
            $"<h2>The write-up</h2>\n<p><a href=\"{place}/write-up.html\">{PageParts.Text(title)}</a>, one page for a screen, a phone "
            + $"or a printer.</p>\n<ul>\n");
        foreach (var (name, what) in OtherForms.Where(form => trial.Holds($"write-up/{form.Name}")))
        {
            page.Append(CultureInfo.InvariantCulture, $"<li><a href=\"{place}/{name}\">{what}</a></li>\n");
        }

        page.Append("</ul>\n");
    }

    private static readonly (string Name, string What)[] OtherForms =
    [
        ("write-up.md", "The same as Markdown, with its figures as files"),
        ("write-up.docx", "The same for a word processor"),
        ("summary-16x9.svg", "The trial in one picture, wide"),
        ("summary-square.svg", "The trial in one picture, square"),
        ("tables/ledger.csv", "Every number stated, with its method and its source, for a spreadsheet"),
    ];

    private static void AddTrials(StringBuilder page, IReadOnlyCollection<TrialFolder> trials)
    {
        page.Append("<h2>The trial as the notebooks left it</h2>\n<p>A working copy; the original was not changed.</p>\n<ul>\n");
        foreach (var trial in trials.Where(t => Directory.Exists(t.Path)))
        {
            foreach (var name in trial.Names("*").Where(n => !n.StartsWith('.')))
            {
                var place = $"{Uri.EscapeDataString(trial.Name)}/{Uri.EscapeDataString(name)}";
                page.Append(CultureInfo.InvariantCulture, $"<li><a href=\"{place}\">{PageParts.Text($"{trial.Name}/{name}")}</a></li>\n");
            }
        }

        page.Append("</ul>\n");
    }
}
