using System.Globalization;
using System.Text;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

using Table = SplitBatch.Display.Tables.Table;

namespace SplitBatch.Display.WriteUp;

/// <summary>Writes a document for a word processor: real headings, real tables, pictures with their text alternative.</summary>
internal static class DocxWriter
{
    public static byte[] Write(Document document)
    {
        using var stream = new MemoryStream();
        using (var package = WordprocessingDocument.Create(stream, WordprocessingDocumentType.Document))
        {
            var main = package.AddMainDocumentPart();
            package.ChangeIdOfPart(main, "rId1"); // the ids given by default are random
            var styles = main.AddNewPart<StyleDefinitionsPart>("rIdStyles");
            styles.Styles = DocxStyles.Create();
            var numbering = main.AddNewPart<NumberingDefinitionsPart>("rIdNumbering");
            numbering.Numbering = DocxStyles.BulletNumbering();
            var body = new Body(new DocxContent(document, main).All());
            body.AppendChild(new SectionProperties(
                new PageSize { Width = 11906, Height = 16838 },
                new PageMargin { Top = 1020, Bottom = 1020, Left = 1134, Right = 1134, Header = 600, Footer = 600, Gutter = 0 }));
            main.Document = new DocumentFormat.OpenXml.Wordprocessing.Document(body);
            var core = package.AddCoreFilePropertiesPart();
            package.ChangeIdOfPart(core, "rId2");
            using var properties = new MemoryStream(Encoding.UTF8.GetBytes(CoreProperties(document.Title)));
            core.FeedData(properties);
        }

        return FixedZip.Rewrite(stream.ToArray());
    }

    private static string CoreProperties(string title) =>
        "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n" +
        "<cp:coreProperties xmlns:cp=\"http://schemas.openxmlformats.org/package/2006/metadata/core-properties\" "
        + "xmlns:dc=\"http://purl.org/dc/elements/1.1/\">" +
        $"<dc:title>{Xml.Text(title)}</dc:title><dc:language>en</dc:language></cp:coreProperties>";
}

/// <summary>The blocks of a document as paragraphs, tables and pictures of a word-processor file.</summary>
internal sealed class DocxContent(Document document, MainDocumentPart main)
{
    private int _pictures;
    private int _tables;
    private int _links;

    public IEnumerable<OpenXmlElement> All()
    {
        yield return Styled("Title", document.Title);
        if (document.Subtitle.Length > 0) yield return Styled("Subtitle", document.Subtitle);
        foreach (var block in document.Blocks)
        {
            LongCall.Look();
            foreach (var element in Of(block)) yield return element;
        }
    }

    private IEnumerable<OpenXmlElement> Of(Block block) => block switch
    {
        Heading heading => [Styled(string.Create(CultureInfo.InvariantCulture, $"Heading{heading.Level - 1}"), heading.Text)],
        Paragraph paragraph => [Styled(null, paragraph.Text)],
        Prose prose => ProseReader.Read(prose.Markdown).Select(Of),
        Bullets bullets => bullets.Items.Select(item => Styled("ListBullet", item)),
        Claims claims => [Styled(null, Sentences(claims.Items))],
        Callout callout => Of(callout),
        FigureBlock figure => Of(figure.Figure),
        TableBlock table => Of(table.Table, string.Create(CultureInfo.InvariantCulture, $"Table {++_tables}. ")),
        Ledger => Of(document.LedgerTable(), ""),
        _ => throw new NotSupportedException($"There is no way to write a {block.GetType().Name} for a word processor."),
    };

    private IEnumerable<OpenXmlElement> Of(Callout callout)
    {
        yield return Styled("Callout", new Run(new RunProperties(new Bold()), Words(callout.Title)));
        if (callout.Text.Length > 0) yield return Styled("Callout", callout.Text);
        if (callout.Claims.Count > 0) yield return Styled("Callout", Sentences(callout.Claims));
    }

    private IEnumerable<OpenXmlElement> Of(Figures.Figure figure)
    {
        var number = ++_pictures;
        if (document.Drawn[number - 1] is { Png: { } png } drawn)
        {
            var id = string.Create(CultureInfo.InvariantCulture, $"rIdPicture{number}");
            var part = main.AddImagePart(ImagePartType.Png, id);
            using (var data = new MemoryStream(png)) part.FeedData(data);
            yield return new DocumentFormat.OpenXml.Wordprocessing.Paragraph(
                new ParagraphProperties(new KeepNext()),
                new Run(DocxStyles.Picture(id, (uint)number, Xml.Clean(figure.Title), Xml.Clean(figure.AltText), drawn.Size.Width,
                    drawn.Size.Height)));
        }

        var row = document.NumberOfCaption(number - 1) is { } entry ? string.Create(CultureInfo.InvariantCulture, $"\u00A0[{entry}]") : "";
        yield return Styled("Caption", string.Create(CultureInfo.InvariantCulture, $"Figure {number}. {figure.Reading}{row}"));
    }

    private static IEnumerable<OpenXmlElement> Of(Table table, string number)
    {
        yield return Styled("TableCaption", number + table.Caption);
        var shown = new DocumentFormat.OpenXml.Wordprocessing.Table(DocxStyles.TableFrame(),
            new TableGrid(table.Columns.Select(_ => new GridColumn())));
        shown.AppendChild(
            new TableRow([new TableRowProperties(new CantSplit(), new TableHeader()),
                .. table.Columns.Select(c => Cell(c.Heading, c.IsNumber, bold: true))]));
        for (var row = 0; row < table.Rows.Count; row++)
        {
            var r = row;
            shown.AppendChild(
                new TableRow([new TableRowProperties(new CantSplit()),
                    .. table.Columns.Select((c, i) => Cell(table.Cell(r, i), c.IsNumber, bold: false))]));
        }

        yield return shown;
        yield return Styled("Caption", table.Note);
    }

    private DocumentFormat.OpenXml.Wordprocessing.Paragraph Of(Piece piece)
    {
        var paragraph = Styled(piece.Kind switch { PieceKind.Bullet => "ListBullet", PieceKind.Quotation => "Quote", _ => null },
            Array.Empty<OpenXmlElement>());
        foreach (var span in piece.Spans)
        {
            var properties = new RunProperties();
            if (span.Bold) properties.AppendChild(new Bold());
            if (span.Italic) properties.AppendChild(new Italic());
            var run = new Run(properties, Words(span.Text));
            if (span.Link is not { } link)
            {
                paragraph.AppendChild(run);
                continue;
            }

            var id = string.Create(CultureInfo.InvariantCulture, $"rIdLink{++_links}");
            main.AddHyperlinkRelationship(new Uri(link), true, id);
            properties.AppendChild(new Color { Val = Theme.LinkColour[1..] });
            properties.AppendChild(new Underline { Val = UnderlineValues.Single });
            paragraph.AppendChild(new Hyperlink(run) { Id = id });
        }

        return paragraph;
    }

    private string Sentences(IReadOnlyList<Claim> claims) =>
        string.Join(" ", claims.Select(claim => $"{claim.Sentence}\u00A0[{document.NumberOf(claim)}]"));

    private static TableCell Cell(string text, bool isNumber, bool bold)
    {
        var run = new Run(new RunProperties(), Words(text));
        if (bold) run.RunProperties!.AppendChild(new Bold());
        var properties = new ParagraphProperties(new ParagraphStyleId { Val = "TableText" });
        if (isNumber) properties.AppendChild(new Justification { Val = JustificationValues.Right });
        return new TableCell(new DocumentFormat.OpenXml.Wordprocessing.Paragraph(properties, run));
    }

    private static DocumentFormat.OpenXml.Wordprocessing.Paragraph Styled(string? style, string text) =>
        Styled(style, new Run(Words(text)));

    private static DocumentFormat.OpenXml.Wordprocessing.Paragraph Styled(string? style, params OpenXmlElement[] content)
    {
        var paragraph = new DocumentFormat.OpenXml.Wordprocessing.Paragraph();
        if (style is not null) paragraph.AppendChild(new ParagraphProperties(new ParagraphStyleId { Val = style }));
        foreach (var element in content) paragraph.AppendChild(element);
        return paragraph;
    }

    private static Text Words(string text) => new(Xml.Clean(text)) { Space = SpaceProcessingModeValues.Preserve };
}
