using System.Text;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Data.Analysis;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Bitterness;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;

namespace SplitBatch.Display.Notebooks;

public class NotebookDisplayTests
{
    public NotebookDisplayTests() => NotebookDisplay.Register();

    private static string Show(object value, string mime = "text/html") => Formatter.ToDisplayString(value, mime);

    private static string Drawing(IElement picture) =>
        Encoding.UTF8.GetString(Convert.FromBase64String(picture.GetAttribute("src")!["data:image/svg+xml;base64,".Length..]));

    [Fact]
    public void A_figure_shows_as_html_plotly_picture_and_sentence()
    {
        var figure = Samples.Bars();
        Assert.Equal(["text/html", "application/vnd.plotly.v1+json", "image/svg+xml", "text/plain"],
            Formatter.GetPreferredMimeTypesFor(typeof(Figure)));
        Assert.Equal(figure.AltText, Show(figure, "text/plain"));
        using var plotly = JsonDocument.Parse(Show(figure, "application/vnd.plotly.v1+json"));
        Assert.Equal(2, plotly.RootElement.GetProperty("data").GetArrayLength());
        Assert.StartsWith("<svg", Show(figure, "image/svg+xml"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_carries_its_picture_its_numbers_and_no_outside_address()
    {
        var figure = Samples.Intervals();
        var html = Show(figure);
        var page = new HtmlParser().ParseDocument(html);
        Assert.Equal([figure.ToSvg(), figure.ToSvg(360)], page.QuerySelectorAll("img").Select(Drawing));
        Assert.All(page.QuerySelectorAll("img"), picture => Assert.Equal(figure.AltText, picture.GetAttribute("alt")));
        Assert.Equal(3, page.QuerySelectorAll("details th").Length);
        Assert.DoesNotContain("https://", html, StringComparison.Ordinal);
        Assert.InRange(html.Length, 5_000, 60_000);
    }

    [Fact]
    public void A_figure_still_shows_one_picture_where_a_notebook_is_not_trusted()
    {
        // What notebooks take out of HTML that they do not trust: scripts, style sheets, drawings. Inline styles stay.
        var page = new HtmlParser().ParseDocument(Show(Samples.Intervals()));
        foreach (var gone in page.QuerySelectorAll("script, style, svg")) gone.Remove();
        var shown = Assert.Single(page.QuerySelectorAll(".split-batch-chart > div"),
            part => !part.GetAttribute("style")!.Contains("display:none", StringComparison.Ordinal));
        Assert.Equal(Samples.Intervals().ToSvg(), Drawing(Assert.Single(shown.Children)));
        Assert.Equal("", shown.TextContent.Trim());
    }

    [Fact]
    public void Tables_take_the_colours_of_a_dark_notebook_and_pictures_bring_their_own_paper()
    {
        var page = new HtmlParser().ParseDocument(Show(Samples.Intervals()));
        Assert.All(page.QuerySelectorAll("details, details *"),
            part => Assert.DoesNotContain("#", part.GetAttribute("style") ?? "", StringComparison.Ordinal));
        Assert.Null(page.QuerySelector(".split-batch-chart")!.GetAttribute("style")!.Split(';')
            .FirstOrDefault(s => s.StartsWith("background", StringComparison.Ordinal)));
        Assert.All(page.QuerySelectorAll(".split-batch-chart > div"),
            part => Assert.Contains($"background:{Theme.Paper}", part.GetAttribute("style"), StringComparison.Ordinal));
    }

    [Fact]
    public void A_chart_of_ones_own_made_with_Plotly_shows_without_an_outside_address()
    {
        var html = Show(Plotly.NET.CSharp.Chart.Point<double, double, string>([1.0, 2.0], [3.0, 4.0]));
        Assert.Contains("plotly.js, which was not found", html, StringComparison.Ordinal);
        Assert.DoesNotContain("cdn", html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_data_frame_shows_as_a_table_with_numbers_to_the_right_and_text_encoded()
    {
        var frame = new DataFrame(
            new StringDataFrameColumn("lot", ["<b>one</b>", "two"]),
            new DoubleDataFrameColumn("amount [g]", [18.5, null]));
        var page = new HtmlParser().ParseDocument(Show(frame));
        Assert.Equal("<b>one</b>", page.QuerySelector("td")!.TextContent);
        Assert.Contains("text-align:right", page.QuerySelectorAll("td")[1].GetAttribute("style"), StringComparison.Ordinal);
        Assert.Equal("\u2013", page.QuerySelectorAll("td")[3].TextContent);
    }

    [Fact]
    public void A_long_data_frame_is_cut_and_says_so()
    {
        NotebookDisplay.Register(new NotebookDisplayOptions { TableRows = 30 });
        var frame = new DataFrame(new DoubleDataFrameColumn("x", Enumerable.Range(0, 500).Select(i => (double)i)));
        var page = new HtmlParser().ParseDocument(Show(frame));
        Assert.Equal(30, page.QuerySelectorAll("tbody tr").Length);
        Assert.Contains("30 of 500 rows are shown", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_result_shows_as_its_sentence() =>
        Assert.Contains("31.5 IBU", Show(BitternessUnits.From(31.5)), StringComparison.Ordinal);

    [Fact]
    public void The_chart_library_comes_once_for_the_head_of_a_page()
    {
        Assert.InRange(NotebookDisplay.ChartScript.Length, 3_000_000, 5_000_000);
        Assert.DoesNotContain("</script", NotebookDisplay.ChartScript, StringComparison.OrdinalIgnoreCase);
    }
}
