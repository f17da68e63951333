using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// Reads a person's Markdown as far as a write-up carries it: paragraphs, lists, quotations, emphasis, code and links to web
/// pages. HTML, pictures, other links and headings become plain text, so nothing active comes through.
/// </summary>
internal static class ProseReader
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().DisableHtml().Build();

    public static IReadOnlyList<Piece> Read(string markdown) =>
        [.. Markdown.Parse(markdown ?? "", Pipeline).SelectMany(block => Pieces(block, PieceKind.Paragraph))
            .Where(p => p.Spans.Count > 0)];

    private static IEnumerable<Piece> Pieces(Markdig.Syntax.Block block, PieceKind kind) => block switch
    {
        ListBlock list => list.OfType<ListItemBlock>().SelectMany(item => item.SelectMany(inner => Pieces(inner, PieceKind.Bullet))),
        QuoteBlock quote => quote.SelectMany(inner => Pieces(inner, PieceKind.Quotation)),
        HeadingBlock heading => [new Piece(kind, [.. Spans(heading.Inline, new Span("", Bold: true))])],
        CodeBlock code => [new Piece(kind, [new Span(code.Lines.ToString(), Code: true)])],
        LeafBlock leaf => [new Piece(kind, [.. Spans(leaf.Inline, default)])],
        ContainerBlock container => container.SelectMany(inner => Pieces(inner, kind)),
        _ => [],
    };

    private static IEnumerable<Span> Spans(ContainerInline? inlines, Span style)
    {
        if (inlines is null) yield break;
        foreach (var inline in inlines)
        {
            var spans = inline switch
            {
                LiteralInline text => [style with { Text = text.Content.ToString() }],
                CodeInline code => [style with { Text = code.Content, Code = true }],
                LineBreakInline => [style with { Text = " " }],
                HtmlEntityInline entity => [style with { Text = entity.Transcoded.ToString() }],
                AutolinkInline auto => [style with { Text = auto.Url, Link = auto.IsEmail ? null : Safe(auto.Url) }],
                EmphasisInline strong when strong.DelimiterCount >= 2 => Spans(strong, style with { Bold = true }),
                EmphasisInline emphasis => Spans(emphasis, style with { Italic = true }),
                LinkInline { IsImage: true } image => Spans(image, style),
                LinkInline link => Spans(link, style with { Link = Safe(link.Url) }),
                ContainerInline container => Spans(container, style),
                _ => [style with { Text = inline.ToString() ?? "" }],
            };
            foreach (var span in spans.Where(s => !string.IsNullOrEmpty(s.Text))) yield return span;
        }
    }

    /// <summary>The address if it is that of a web page, else null.</summary>
    private static string? Safe(string? address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is ("https" or "http") ? uri.AbsoluteUri : null;
}

/// <summary>A stretch of text in one style.</summary>
internal readonly record struct Span(string Text, bool Bold = false, bool Italic = false, bool Code = false, string? Link = null);

/// <summary>What a piece of prose is.</summary>
internal enum PieceKind
{
    Paragraph,
    Bullet,
    Quotation,
}

/// <summary>One paragraph of prose, whatever the writer set around it.</summary>
internal sealed record Piece(PieceKind Kind, IReadOnlyList<Span> Spans);
