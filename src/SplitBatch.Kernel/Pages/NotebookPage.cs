using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SplitBatch.Display.Notebooks;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Display;

namespace SplitBatch.Kernel.Pages;

/// <summary>An executed notebook as one page that stands alone: no other file and no network.</summary>
public static partial class NotebookPage
{
    /// <summary>Writes the page.</summary>
    /// <param name="path">The file.</param>
    /// <param name="notebook">The executed notebook.</param>
    /// <param name="title">The page's title.</param>
    /// <param name="failure">The cell that stopped it, if one did.</param>
    public static void Write(string path, Notebook notebook, string title, CellFailure? failure = null) =>
        File.WriteAllText(path, Html(notebook, title, failure));

    /// <summary>The page as text.</summary>
    public static string Html(Notebook notebook, string title, CellFailure? failure = null)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        var page = PageParts.Start(title, "notebook");
        page.Append("<nav class=\"page\"><a href=\"index.html\">All notebooks of this run</a></nav>\n<main>\n");
        if (notebook.Title is null) page.Append(CultureInfo.InvariantCulture, $"<h1>{PageParts.Text(title)}</h1>\n");
        if (failure is not null)
        {
            page.Append(CultureInfo.InvariantCulture,
                $"<p class=\"banner\" role=\"note\"><strong>This notebook stopped at <a href=\"#stopped\">cell "
                + $"{failure.Cell}</a>.</strong> What follows that cell was not run.</p>\n");
        }

        var ids = new PageIds();
        foreach (var cell in notebook.Cells) AddCell(page, cell, ids);
        var how = failure is null ? "from start to end" : "up to the cell that failed";
        page.Append(CultureInfo.InvariantCulture,
            $"</main>\n<footer>\n<p>Made by running the notebook of the same name {how} with SplitBatch. The page needs no "
            + $"network.</p>\n</footer>\n");
        if (page.ToString().Contains("data-chart=", StringComparison.Ordinal))
            page.Append("<script>").Append(NotebookDisplay.ChartScript).Append("</script>\n");
        return WithStylesInHead(page.Append(PageParts.End).ToString());
    }

    /// <summary>Styles that came with the cells' outputs, each once and where HTML wants them.</summary>
    private static string WithStylesInHead(string page)
    {
        var body = page.IndexOf("<body", StringComparison.Ordinal);
        var script = page.LastIndexOf("<script>", StringComparison.Ordinal) is var found and >= 0 ? found : page.Length;
        var shown = page[body..script];
        var styles = Style().Matches(shown).Select(match => match.Value).Distinct().ToList();
        if (styles.Count == 0) return page;
        var head = page[..body].Replace("</head>", $"{string.Join('\n', styles)}\n</head>", StringComparison.Ordinal);
        return head + Style().Replace(shown, "") + page[script..];
    }

    [GeneratedRegex("<style>[^<]*</style>")]
    private static partial Regex Style();

    private static void AddCell(StringBuilder page, NotebookCell cell, PageIds ids)
    {
        if (cell.Kind == CellKind.Markdown)
            page.Append("<div class=\"prose\">\n").Append(ids.MakeUnique(Prose.Html(cell), cell.Number)).Append("</div>\n");
        if (cell.Kind != CellKind.Code || string.IsNullOrWhiteSpace(cell.Source)) return;
        var given = cell.Tags.Contains(ParameterCell.InjectedTag) ? " given" : "";
        page.Append(CultureInfo.InvariantCulture,
            $"<div class=\"code{given}\" role=\"group\" aria-label=\"Code of cell "
            + $"{cell.Number}\"><pre><code>{CodeHtml.Of(cell.Source.TrimEnd())}</code></pre></div>\n");
        if (cell.Outputs.Count == 0) return;
        page.Append("<div class=\"out\">\n");
        foreach (var output in cell.Outputs.OfType<JsonObject>()) OutputHtml.Add(page, output);
        page.Append("</div>\n");
    }
}
