using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Pages;

public class NotebookPageTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    private static readonly HtmlParser Parser = new(new HtmlParserOptions { IsStrictMode = true });

    [Fact]
    public async Task The_page_of_a_run_notebook_is_valid_and_asks_nothing_of_the_network()
    {
        var notebook = Notebook.Parse(NotebookText.Tiny);
        await NotebookRunner.RunAsync(notebook, kernel.Host);
        var html = NotebookPage.Html(notebook, notebook.Title!);
        var page = Parser.ParseDocument(html);
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("A tiny notebook", page.Title);
        Assert.Equal("A tiny notebook", Assert.Single(page.QuerySelectorAll("h1")).TextContent);
        Assert.Equal(["A table", "A chart"], page.QuerySelectorAll("h2").Select(h => h.TextContent));
        Assert.Single(page.QuerySelectorAll("script"), s => s.TextContent.Length > 1_000_000);
        Assert.NotEmpty(page.QuerySelectorAll("[data-chart]"));
        Assert.Empty(page.QuerySelectorAll("link, iframe, object, embed"));
        Assert.All(
            page.QuerySelectorAll("[src], [href]").Select(e => e.GetAttribute("src") ?? e.GetAttribute("href")!),
            target =>
                Assert.True(target.StartsWith('#') || target.StartsWith("data:", StringComparison.Ordinal)
                || target == "index.html", target));
        Assert.Contains("default-src 'none'", page.QuerySelector("meta[http-equiv]")!.GetAttribute("content"), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_chart_the_page_is_small()
    {
        var html = NotebookPage.Html(Notebook.Parse(NotebookText.Of(NotebookText.Markdown("# Small"))), "Small");
        Assert.True(html.Length < 10_000);
        Assert.Empty(Parser.ParseDocument(html).QuerySelectorAll("script"));
    }

    [Fact]
    public void Code_and_text_are_shown_as_they_are_and_never_taken_as_html()
    {
        var code = NotebookText.Code("var a = \"<b>\" + 1; // <i>&</i>\nif (a is List<int> && true) { }");
        code["outputs"]!.AsArray()
            .Add(System.Text.Json.Nodes.JsonNode.Parse(
            """{"output_type":"stream","name":"stdout","text":["\u001b[31m<script>x</script>\n"]}"""));
        var page = Parser.ParseDocument(NotebookPage.Html(Notebook.Parse(NotebookText.Of(code)), "Own title <1>"));
        Assert.Equal(((string?)code["source"])!, page.QuerySelector("code")!.TextContent);
        Assert.Equal("<script>x</script>\n", page.QuerySelector("pre.stdout")!.TextContent);
        Assert.Equal("Own title <1>", page.QuerySelector("h1")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("script"));
    }

    [Fact]
    public void Ids_are_unique_and_links_lead_within_their_cell()
    {
        var page = Parser.ParseDocument(NotebookPage.Html(
            Notebook.Parse(
                NotebookText.Of(NotebookText.Markdown("# Hops\n\nOne[^1]\n\n[^1]: first"),
                NotebookText.Markdown("## Hops\n\nTwo[^1]\n\n[^1]: second"))), "t"));
        var ids = page.QuerySelectorAll("[id]").Select(e => e.Id).ToList();
        Assert.Equal(ids.Distinct(), ids);
        Assert.All(page.QuerySelectorAll("a[href^='#']"), a => Assert.Contains(a.GetAttribute("href")![1..], ids));
        Assert.Equal("hops-2", page.QuerySelector("h2")!.Id);
    }

    [Fact]
    public void A_picture_has_its_plain_text_as_alternative()
    {
        var code = NotebookText.Code("chart");
        code["outputs"]!.AsArray()
            .Add(System.Text.Json.Nodes.JsonNode.Parse(
            """{"output_type":"display_data","metadata":{},"data":{"image/png":"AAAA","text/plain":["Two bars, \"A\" and B"]}}"""));
        var image = Parser.ParseDocument(NotebookPage.Html(Notebook.Parse(NotebookText.Of(code)), "t")).QuerySelector("img")!;
        Assert.Equal("Two bars, \"A\" and B", image.GetAttribute("alt"));
        Assert.Equal("data:image/png;base64,AAAA", image.GetAttribute("src"));
    }

    [Fact]
    public void A_picture_attached_to_prose_is_put_into_the_page()
    {
        var prose = NotebookText.Markdown("![A glass](attachment:glass.png)");
        prose["attachments"] = System.Text.Json.Nodes.JsonNode.Parse("""{"glass.png":{"image/png":"AAAA"}}""");
        var image = Parser.ParseDocument(NotebookPage.Html(Notebook.Parse(NotebookText.Of(prose)), "t")).QuerySelector("img")!;
        Assert.Equal(("A glass", "data:image/png;base64,AAAA"), (image.GetAttribute("alt"), image.GetAttribute("src")));
    }

    [Fact]
    public async Task A_failed_notebook_says_so_at_the_top_and_leads_to_the_cell()
    {
        var notebook = Notebook.Parse(NotebookText.Of(NotebookText.Code("1"), NotebookText.Code("throw new Exception(\"no wort\");")));
        var failure = await NotebookRunner.RunAsync(notebook, kernel.Host);
        var page = Parser.ParseDocument(NotebookPage.Html(notebook, "t", failure));
        Assert.Equal("This notebook stopped at cell 2. What follows that cell was not run.", page.QuerySelector(".banner")!.TextContent);
        Assert.Contains("no wort", page.QuerySelector(page.QuerySelector(".banner a")!.GetAttribute("href")!)!.TextContent,
            StringComparison.Ordinal);
    }
}
