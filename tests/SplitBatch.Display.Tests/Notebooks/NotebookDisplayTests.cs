using System.Text.Json;
using AngleSharp.Html.Parser;
using Microsoft.Data.Analysis;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Bitterness;
using SplitBatch.Display.Figures;

namespace SplitBatch.Display.Notebooks;

public class NotebookDisplayTests
{
    public NotebookDisplayTests() => NotebookDisplay.Register();

    private static string Show(object value, string mime = "text/html") => Formatter.ToDisplayString(value, mime);

    [Fact]
    public void A_figure_shows_as_html_plotly_picture_and_sentence()
    {
        var figure = Samples.Bars();
        Assert.Equal(["text/html", "application/vnd.plotly.v1+json", "image/svg+xml", "text/plain"], Formatter.GetPreferredMimeTypesFor(typeof(Figure)));
        Assert.Equal(figure.AltText, Show(figure, "text/plain"));
        using var plotly = JsonDocument.Parse(Show(figure, "application/vnd.plotly.v1+json"));
        Assert.Equal(2, plotly.RootElement.GetProperty("data").GetArrayLength());
        Assert.StartsWith("<svg", Show(figure, "image/svg+xml"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_carries_its_picture_its_numbers_and_no_outside_address()
    {
        var html = Show(Samples.Intervals());
        var page = new HtmlParser().ParseDocument(html);
        Assert.Equal(2, page.QuerySelectorAll("svg").Length);
        Assert.Equal(3, page.QuerySelectorAll("details th").Length);
        Assert.DoesNotContain("https://", html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.InRange(html.Length, 5_000, 60_000);
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
            new DoubleDataFrameColumn("amount [g]", [12.5, null]));
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
