using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Pages;

/// <summary>
/// An executed notebook as one page, which reads and prints without any other file; its charts move when <c>charts.js</c> is beside it.
/// </summary>
public static class NotebookPage
{
    /// <summary>Writes the page, and beside it the script of its charts.</summary>
    /// <param name="path">The file.</param>
    /// <param name="notebook">The executed notebook.</param>
    /// <param name="title">The page's title.</param>
    /// <param name="failure">The cell that stopped it, if one did.</param>
    public static void Write(string path, Notebook notebook, string title, CellFailure? failure = null)
    {
        var head = new PageHead();
        File.WriteAllText(path, Html(notebook, title, failure, head));
        if (head.HasCharts) PageHead.WriteBeside(path);
    }

    /// <summary>The page as text.</summary>
    public static string Html(Notebook notebook, string title, CellFailure? failure = null) => Html(notebook, title, failure, new());

    private static string Html(Notebook notebook, string title, CellFailure? failure, PageHead head)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        var page = new StringBuilder("<nav class=\"page\"><a href=\"index.html\">All notebooks of this run</a></nav>\n<main>\n");
        if (notebook.Title is null) page.Append(CultureInfo.InvariantCulture, $"<h1>{PageParts.Text(title)}</h1>\n");
        if (failure is not null)
        {
            page.Append(CultureInfo.InvariantCulture,
                $"<p class=\"banner\" role=\"note\"><strong>This notebook stopped at <a href=\"#stopped\">cell "
                + $"{failure.Cell}</a>.</strong> What follows that cell was not run.</p>\n");
        }

        var ids = new PageIds();
        foreach (var cell in notebook.Cells) AddCell(page, cell, ids, head);
        var how = failure is null ? "from start to end" : "up to the cell that failed";
        page.Append(CultureInfo.InvariantCulture,
            $"</main>\n<footer>\n<p>Made by running the notebook of the same name {how} with SplitBatch. The page needs no "
            + $"network.{(head.HasCharts
                ? $" With {PageHead.File} beside it, its charts answer the pointer; without, they are pictures."
                : "")}"
            + $"</p>\n</footer>\n");
        return PageParts.Start(title, "notebook", head.Policy, head.Styles).Append(page).Append(head.Element).Append(PageParts.End)
            .ToString();
    }

    private static void AddCell(StringBuilder page, NotebookCell cell, PageIds ids, PageHead head)
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
        foreach (var output in cell.Outputs.OfType<JsonObject>()) OutputHtml.Add(page, output, head);
        page.Append("</div>\n");
    }
}
