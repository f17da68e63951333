using System.IO.Compression;
using AngleSharp.Html.Parser;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;

namespace SplitBatch.Display.WriteUp;

public sealed class DocumentTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("split-batch-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_heading_that_skips_a_level_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => new Document("t", new Heading("one"), new Heading("three", 4)));
        Assert.Contains("\"three\" has level 4 after level 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_needs_no_script_and_nothing_from_outside()
    {
        var html = SampleDocument.Create().ToHtml();
        var page = new HtmlParser().ParseDocument(html);
        Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, object, embed"));
        Assert.DoesNotContain("url(", html, StringComparison.Ordinal);
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
    }

    [Fact]
    public void Headings_stand_in_order_and_figures_have_words()
    {
        var page = new HtmlParser().ParseDocument(SampleDocument.Create().ToHtml());
        var levels = page.QuerySelectorAll("h1,h2,h3,h4,h5").Select(h => h.LocalName[1] - '0').ToList();
        Assert.Equal(1, levels[0]);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
        Assert.All(page.QuerySelectorAll("svg"), svg =>
        {
            Assert.Equal("img", svg.GetAttribute("role"));
            Assert.True(svg.QuerySelector("title")!.TextContent.Length > 0 && svg.QuerySelector("desc")!.TextContent.Length > 20);
        });
    }

    [Fact]
    public void A_claim_points_to_its_row_of_the_ledger()
    {
        var page = new HtmlParser().ParseDocument(SampleDocument.Create().ToHtml());
        Assert.All(page.QuerySelectorAll("a.ref"), link => Assert.NotNull(page.QuerySelector(link.GetAttribute("href")!)));
        Assert.Contains("45.3", page.QuerySelector("#claim-1")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_format_gives_the_same_bytes_again()
    {
        var first = DocumentFiles.Render(SampleDocument.Create());
        var second = DocumentFiles.Render(SampleDocument.Create());
        Assert.Equal(first.Select(f => f.Name), second.Select(f => f.Name));
        Assert.All(first.Zip(second), pair => Assert.Equal(pair.First.Content, pair.Second.Content));
    }

    [Fact]
    public void The_word_processor_file_is_valid_and_has_real_headings_and_alternatives()
    {
        using var file = WordprocessingDocument.Open(new MemoryStream(SampleDocument.Create().ToDocx()), false);
        Assert.Empty(new OpenXmlValidator(DocumentFormat.OpenXml.FileFormatVersions.Office2019).Validate(file)
            .Select(e => $"{e.Path?.XPath}: {e.Description}"));
        var xml = file.MainDocumentPart!.Document!.OuterXml;
        Assert.Contains("Heading1", xml, StringComparison.Ordinal);
        if (Figures.Samples.Bars().ToPng() is not null) Assert.Contains("descr=\"Eleven right", xml, StringComparison.Ordinal);
    }

    [Fact]
    public void Saving_again_changes_nothing_and_keeps_what_a_person_changed()
    {
        var written = SampleDocument.Create().SaveTo(_folder);
        Assert.Contains("write-up.html", written);
        var page = Path.Combine(_folder, "write-up.md");
        SampleDocument.Create().SaveTo(_folder);
        Assert.Empty(Directory.GetFiles(_folder, "*kept*", SearchOption.AllDirectories));

        File.AppendAllText(page, "My own last word.\n");
        SampleDocument.Create().SaveTo(_folder);
        Assert.EndsWith("My own last word.\n", File.ReadAllText(Path.Combine(_folder, "write-up.kept-1.md")), StringComparison.Ordinal);
        Assert.DoesNotContain("My own last word.", File.ReadAllText(page), StringComparison.Ordinal);
    }

    [Fact]
    public void No_file_names_the_machine_the_user_or_a_path()
    {
        foreach (var (name, content) in DocumentFiles.Render(SampleDocument.Create()))
        {
            var parts = name.EndsWith(".docx", StringComparison.Ordinal)
                ? new ZipArchive(new MemoryStream(content)).Entries.Select(e => new StreamReader(e.Open()).ReadToEnd())
                : [System.Text.Encoding.Latin1.GetString(content)];
            foreach (var part in parts)
            {
                Assert.DoesNotContain(Environment.CurrentDirectory, part, StringComparison.Ordinal);
                if (Environment.MachineName.Length > 4)
                    Assert.DoesNotContain(Environment.MachineName, part, StringComparison.OrdinalIgnoreCase);
                if (Environment.UserName.Length > 4) Assert.DoesNotContain(Environment.UserName, part, StringComparison.OrdinalIgnoreCase);
            }
        }
    }
}
