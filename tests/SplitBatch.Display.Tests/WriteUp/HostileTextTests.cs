using System.Xml.Linq;
using AngleSharp.Html.Parser;
using DocumentFormat.OpenXml.Packaging;
using Markdig;

namespace SplitBatch.Display.WriteUp;

/// <summary>Text that tries to be more than text, in every free-text place of a write-up, stays text in every format.</summary>
public class HostileTextTests
{
    public static TheoryData<string> Texts =>
    [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "\"><svg onload=alert(1)>",
        "' onmouseover='alert(1)",
        "[click](javascript:alert(1))",
        "![x](https://evil.example/pixel.png)",
        "<javascript:alert(1)>",
        "`</style><script>alert(1)</script>`",
        "]]><script>alert(1)</script>",
        "=HYPERLINK(\"https://evil.example\",\"x\")",
        "+1+cmd|' /C calc'!A0",
        "@SUM(1)",
        "-2+3",
        "| a | b |\n|---|---|",
        "# heading\n\n---\n\n1. list",
        "a\u202Eb\u0000c\u001Bd",
        "{{constructor.constructor('alert(1)')()}}",
    ];

    [Theory]
    [MemberData(nameof(Texts))]
    public void In_the_page(string hostile)
    {
        var page = new HtmlParser().ParseDocument(SampleDocument.Create(hostile).ToHtml());
        AssertInert(page.DocumentElement);
        Assert.Equal(Words(hostile), Words(page.QuerySelector("h1")!.TextContent));
        Assert.Equal(Words(hostile), Words(page.QuerySelector("td")!.TextContent));
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void In_Markdown_as_a_lenient_renderer_shows_it(string hostile)
    {
        var markdown = SampleDocument.Create(hostile).ToMarkdown();
        var html = Markdown.ToHtml(markdown, new MarkdownPipelineBuilder().UseAdvancedExtensions().Build());
        var page = new HtmlParser().ParseDocument(html);
        Assert.All(page.QuerySelectorAll("img"),
            image => Assert.StartsWith("figures/figure-", image.GetAttribute("src"), StringComparison.Ordinal));
        foreach (var image in page.QuerySelectorAll("img").ToList()) image.Remove();
        AssertInert(page.DocumentElement);
        Assert.Equal(Words(hostile), Words(page.QuerySelector("h1")!.TextContent));
        Assert.Equal(Words(hostile), Words(page.QuerySelector("td")!.TextContent));
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void In_tables_for_a_spreadsheet(string hostile)
    {
        foreach (var table in SampleDocument.Create(hostile).Tables)
        {
            var csv = CsvWriter.Write(table);
            using var reader = new CsvHelper.CsvReader(new StringReader(csv), System.Globalization.CultureInfo.InvariantCulture);
            while (reader.Read())
            {
                foreach (var cell in reader.Parser.Record!)
                {
                    var first = cell.TrimStart().FirstOrDefault();
                    Assert.False(first is '=' or '+' or '@' || (first == '-' && !double.TryParse(cell, out _)),
                        $"\"{cell}\" would be taken for a formula");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void In_pictures_and_the_word_processor_file(string hostile)
    {
        var document = SampleDocument.Create(hostile);
        foreach (var svg in document.Figures.Select(f => f.ToSvg()).Append(document.Summary!.ToSvg()))
        {
            var names = XDocument.Parse(svg).Descendants().Select(e => e.Name.LocalName).Distinct();
            Assert.Subset(new HashSet<string> { "svg", "title", "desc", "text", "line", "polyline", "polygon", "circle" },
                names.ToHashSet());
        }

        using var file = WordprocessingDocument.Open(new MemoryStream(document.ToDocx()), false);
        Assert.Contains(Words(hostile), Words(file.MainDocumentPart!.Document!.InnerText), StringComparison.Ordinal);
        Assert.DoesNotContain(file.MainDocumentPart.HyperlinkRelationships, link => link.Uri.Scheme is not ("http" or "https"));
    }

    private static void AssertInert(AngleSharp.Dom.IElement root)
    {
        Assert.Empty(root.QuerySelectorAll("script, img, iframe, object, embed, form, input, link, base"));
        Assert.All(root.QuerySelectorAll("*"), element =>
        {
            Assert.DoesNotContain(element.Attributes, a => a.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase));
            if (element.GetAttribute("href") is { } address)
                Assert.True(address.StartsWith('#') || address.StartsWith("http", StringComparison.Ordinal), address);
        });
    }

    /// <summary>The words alone: what forbids or folds white space does not count.</summary>
    private static string Words(string text) =>
        string.Join(' ', Drawing.Xml.Clean(text).Split([' ', '\n', '\r', '\t', '\u00A0'], StringSplitOptions.RemoveEmptyEntries));
}
