using System.Globalization;
using System.Text;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>Writes a document as one page: no script, no outside file, for a screen, a phone and a printer.</summary>
internal static class HtmlWriter
{
    public static string Write(Document document)
    {
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
            + "content=\"width=device-width, initial-scale=1\">\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<title>{Xml.Text(document.Title)}</title>\n<style>\n{PageStyle.Css}</style>\n</head>\n<body>\n<main>\n");
        html.Append(CultureInfo.InvariantCulture, $"<h1>{Xml.Text(document.Title)}</h1>\n");
        if (document.Subtitle.Length > 0)
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"subtitle\">{Xml.Text(document.Subtitle)}</p>\n");
        var (figure, table) = (0, 0);
        foreach (var block in document.Blocks)
        {
            switch (block)
            {
                case Heading heading:
                    html.Append(CultureInfo.InvariantCulture, $"<h{heading.Level}>{Xml.Text(heading.Text)}</h{heading.Level}>\n");
                    break;
                case Paragraph paragraph:
                    html.Append(CultureInfo.InvariantCulture, $"<p>{Xml.Text(paragraph.Text)}</p>\n");
                    break;
                case Prose prose:
                    Append(html, ProseReader.Read(prose.Markdown));
                    break;
                case Bullets bullets:
                    html.Append("<ul>\n").AppendJoin("", bullets.Items.Select(item => $"<li>{Xml.Text(item)}</li>\n")).Append("</ul>\n");
                    break;
                case Claims claims:
                    html.Append(CultureInfo.InvariantCulture, $"<p>{Sentences(document, claims.Items)}</p>\n");
                    break;
                case Callout callout:
                    html.Append(CultureInfo.InvariantCulture,
                        $"<div class=\"callout\">\n<p class=\"callout-title\">{Xml.Text(callout.Title)}</p>\n");
                    if (callout.Text.Length > 0) html.Append(CultureInfo.InvariantCulture, $"<p>{Xml.Text(callout.Text)}</p>\n");
                    if (callout.Claims.Count > 0)
                        html.Append(CultureInfo.InvariantCulture, $"<p>{Sentences(document, callout.Claims)}</p>\n");
                    html.Append("</div>\n");
                    break;
                case FigureBlock shown:
                    html.Append(CultureInfo.InvariantCulture,
                        $"<figure>\n<div class=\"page\">{document.Drawn[figure].PageSvg}</div>\n<div "
                            + $"class=\"phone\">{document.Drawn[figure].PhoneSvg}</div>\n");
                    var caption = document.NumberOfCaption(figure) is { } row ? "\u00A0" + Mark(document, row) : "";
                    html.Append(CultureInfo.InvariantCulture,
                        $"<figcaption>Figure {++figure}. {Xml.Text(shown.Figure.Reading)}{caption}</figcaption>\n</figure>\n");
                    break;
                case TableBlock shown:
                    Append(html, shown.Table, $"Table {++table}. ", rowIds: null);
                    break;
                case Ledger:
                    Append(html, document.LedgerTable(), "", rowIds: "claim-");
                    break;
                default:
                    throw new NotSupportedException($"There is no way to write a {block.GetType().Name} as HTML.");
            }
        }

        return html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static string Sentences(Document document, IReadOnlyList<Claim> claims) =>
        string.Join(" ", claims.Select(claim => $"{Xml.Text(claim.Sentence)}\u00A0{Mark(document, document.NumberOf(claim))}"));

    private static string Mark(Document document, int number) => document.Blocks.OfType<Ledger>().Any()
        ? $"<a class=\"ref\" href=\"#claim-{number}\" aria-label=\"ledger entry {number}\">[{number}]</a>"
        : $"<span class=\"ref\">[{number}]</span>";

    private static void Append(StringBuilder html, IReadOnlyList<Piece> pieces)
    {
        PieceKind? open = null;
        foreach (var piece in pieces)
        {
            if (open != piece.Kind)
            {
                Close();
                html.Append(piece.Kind switch { PieceKind.Bullet => "<ul>\n", PieceKind.Quotation => "<blockquote>\n", _ => "" });
                open = piece.Kind;
            }

            var tag = piece.Kind == PieceKind.Bullet ? "li" : "p";
            html.Append(CultureInfo.InvariantCulture, $"<{tag}>").AppendJoin("", piece.Spans.Select(Inline))
                .Append(CultureInfo.InvariantCulture, $"</{tag}>\n");
        }

        Close();
        void Close() => html.Append(open switch { PieceKind.Bullet => "</ul>\n", PieceKind.Quotation => "</blockquote>\n", _ => "" });
    }

    private static string Inline(Span span)
    {
        var text = Xml.Text(span.Text);
        if (span.Code) text = $"<code>{text}</code>";
        if (span.Italic) text = $"<em>{text}</em>";
        if (span.Bold) text = $"<strong>{text}</strong>";
        return span.Link is { } link ? $"<a href=\"{Xml.Text(link)}\" rel=\"nofollow noopener\">{text}</a>" : text;
    }

    private static void Append(StringBuilder html, Table table, string number, string? rowIds)
    {
        var whole = table.Rows.Count <= 8 ? " short" : "";
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"table{whole}\" role=\"region\" tabindex=\"0\" aria-label=\"{Xml.Text(table.Caption)}\">\n<table>\n");
        html.Append(CultureInfo.InvariantCulture, $"<caption>{number}{Xml.Text(table.Caption)}</caption>\n<thead>\n<tr>");
        foreach (var column in table.Columns)
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{Class(column)}>{Xml.Text(column.Heading)}</th>");
        html.Append("</tr>\n</thead>\n<tbody>\n");
        for (var row = 0; row < table.Rows.Count; row++)
        {
            html.Append(rowIds is null ? "<tr>" : $"<tr id=\"{rowIds}{row + 1}\">");
            for (var column = 0; column < table.Columns.Count; column++)
                html.Append(CultureInfo.InvariantCulture, $"<td{Class(table.Columns[column])}>{Xml.Text(table.Cell(row, column))}</td>");
            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
        if (table.Note.Length > 0) html.Append(CultureInfo.InvariantCulture, $"<p class=\"note\">{Xml.Text(table.Note)}</p>\n");
        html.Append("</div>\n");
    }

    private static string Class(TableColumn column) => column.IsNumber ? " class=\"number\"" : "";
}
