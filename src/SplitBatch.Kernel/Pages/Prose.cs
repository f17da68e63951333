using System.Text.Json.Nodes;
using Markdig;
using Markdig.Syntax;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Pages;

/// <summary>The prose of a notebook as HTML and as plain text.</summary>
internal static class Prose
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseFootnotes().UseEmphasisExtras().UseAutoIdentifiers().UseTaskLists().UseDefinitionLists()
        .UseAutoLinks().Build();

    /// <summary>Markdown as HTML; pictures attached to the cell are put into the page.</summary>
    public static string Html(NotebookCell cell)
    {
        var source = cell.Source;
        foreach (var (name, forms) in cell.Attachments ?? [])
        {
            if (forms is not JsonObject { Count: > 0 } bundle) continue;
            var (type, data) = bundle.First();
            if (PageParts.Address(type, MultilineText.Join(data)) is { } address)
                source = source.Replace($"attachment:{name}", address, StringComparison.Ordinal);
        }

        return Markdown.ToHtml(source, Pipeline);
    }

    public static string Html(string markdown) => Markdown.ToHtml(markdown, Pipeline);

    /// <summary>The first paragraph of the notebook, without marks, cut to about 240 characters at a word.</summary>
    public static string FirstParagraph(Notebook notebook)
    {
        foreach (var cell in notebook.Cells.Where(c => c.Kind == CellKind.Markdown))
        {
            if (Markdown.Parse(cell.Source, Pipeline).OfType<ParagraphBlock>().FirstOrDefault() is not { } paragraph) continue;
            var text = Markdown.ToPlainText(cell.Source.Substring(paragraph.Span.Start, paragraph.Span.Length)).ReplaceLineEndings(" ")
                .Trim();
            if (text.Length <= 240) return text;
            return text[..(text.LastIndexOf(' ', 240) is var cut and > 0 ? cut : 240)] + "…";
        }

        return "";
    }
}
