using System.Globalization;
using System.Text;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>Writes a document as Markdown that any common renderer reads; text of others is escaped, so it stays text.</summary>
internal static class MarkdownWriter
{
    public static string Write(Document document, string figureFolder)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# {Escape(document.Title)}\n\n");
        if (document.Subtitle.Length > 0) text.Append(CultureInfo.InvariantCulture, $"*{Escape(document.Subtitle)}*\n\n");
        var (figure, table) = (0, 0);
        foreach (var block in document.Blocks)
        {
            switch (block)
            {
                case Heading heading:
                    text.Append('#', heading.Level).Append(CultureInfo.InvariantCulture, $" {Escape(heading.Text)}\n\n");
                    break;
                case Paragraph paragraph:
                    text.Append(CultureInfo.InvariantCulture, $"{Escape(paragraph.Text)}\n\n");
                    break;
                case Prose prose:
                    Append(text, ProseReader.Read(prose.Markdown));
                    break;
                case Bullets bullets:
                    text.AppendJoin("", bullets.Items.Select(item => $"- {Escape(item)}\n")).Append('\n');
                    break;
                case Claims claims:
                    text.Append(CultureInfo.InvariantCulture, $"{Sentences(document, claims.Items)}\n\n");
                    break;
                case Callout callout:
                    text.Append(CultureInfo.InvariantCulture, $"> **{Escape(callout.Title)}**\n");
                    if (callout.Text.Length > 0) text.Append(CultureInfo.InvariantCulture, $">\n> {Escape(callout.Text)}\n");
                    if (callout.Claims.Count > 0)
                        text.Append(CultureInfo.InvariantCulture, $">\n> {Sentences(document, callout.Claims)}\n");
                    text.Append('\n');
                    break;
                case FigureBlock shown:
                    var file = Document.FigureFile(figure, shown.Figure);
                    var row = document.NumberOfCaption(figure) is { } number
                        ? string.Create(CultureInfo.InvariantCulture, $" \\[{number}\\]")
                        : "";
                    text.Append(CultureInfo.InvariantCulture,
                        $"![{Escape(shown.Figure.AltText)}]({figureFolder}/{file}.svg)\n\n*Figure {++figure}. "
                            + $"{Escape(shown.Figure.Reading)}*{row}\n\n");
                    break;
                case TableBlock shown:
                    Append(text, shown.Table, $"Table {++table}. ");
                    break;
                case Ledger:
                    Append(text, document.LedgerTable(), "");
                    break;
                default:
                    throw new NotSupportedException($"There is no way to write a {block.GetType().Name} as Markdown.");
            }
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>The text so that Markdown shows it as it stands, on one line.</summary>
    public static string Escape(string text)
    {
        var line = string.Join(' ', Xml.Clean(text).Split(['\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries)).Trim();
        var safe = new StringBuilder(line.Length + 16);
        for (var i = 0; i < line.Length; i++)
        {
            _ = line[i] switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '\\' or '`' or '*' or '_' or '[' or ']' or '|' or '~' or '$' => safe.Append('\\').Append(line[i]),
                ':' when line.AsSpan(i).StartsWith("://") => safe.Append("&#58;"), // an address in a text is not made a link
                '@' => safe.Append("&#64;"),
                '#' or '+' or '-' or '=' or '!' when i == 0 => safe.Append('\\').Append(line[i]),
                '.' or ')' when i > 0 && line[..i].All(char.IsAsciiDigit) && (i + 1 == line.Length || line[i + 1] == ' ') =>
                    safe.Append('\\').Append(line[i]),
                var c => safe.Append(c),
            };
        }

        return safe.ToString();
    }

    private static string Sentences(Document document, IReadOnlyList<Claim> claims) =>
        string.Join(" ", claims.Select(claim => $"{Escape(claim.Sentence)} \\[{document.NumberOf(claim)}\\]"));

    private static void Append(StringBuilder text, IReadOnlyList<Piece> pieces)
    {
        for (var i = 0; i < pieces.Count; i++)
        {
            var start = pieces[i].Kind switch { PieceKind.Bullet => "- ", PieceKind.Quotation => "> ", _ => "" };
            text.Append(start).AppendJoin("", pieces[i].Spans.Select(Inline)).Append('\n');
            var sameList = pieces[i].Kind == PieceKind.Bullet && i + 1 < pieces.Count && pieces[i + 1].Kind == PieceKind.Bullet;
            if (!sameList) text.Append('\n');
        }
    }

    private static string Inline(Span span)
    {
        var (before, after) = (span.Text.Length - span.Text.TrimStart().Length, span.Text.Length - span.Text.TrimEnd().Length);
        var core = span.Text.Trim();
        if (core.Length == 0) return span.Text.Length > 0 ? " " : "";
        var text = Escape(core);
        if (span.Italic) text = $"*{text}*";
        if (span.Bold) text = $"**{text}**";
        if (span.Link is { } link)
            text = $"[{text}](<{link.Replace("<", "%3C", StringComparison.Ordinal).Replace(">", "%3E", StringComparison.Ordinal)}>)";
        return $"{(before > 0 ? " " : "")}{text}{(after > 0 ? " " : "")}";
    }

    private static void Append(StringBuilder text, Table table, string number)
    {
        text.Append(CultureInfo.InvariantCulture, $"**{number}{Escape(table.Caption)}**\n\n");
        text.Append("| ").AppendJoin(" | ", table.Columns.Select(c => Escape(c.Heading))).Append(" |\n");
        text.Append('|').AppendJoin("", table.Columns.Select(c => c.IsNumber ? " ---: |" : " --- |")).Append('\n');
        for (var row = 0; row < table.Rows.Count; row++)
            text.Append("| ").AppendJoin(" | ", Enumerable.Range(0, table.Columns.Count).Select(column => Escape(table.Cell(row, column))))
                .Append(" |\n");
        text.Append('\n');
        if (table.Note.Length > 0) text.Append(CultureInfo.InvariantCulture, $"{Escape(table.Note)}\n\n");
    }
}
