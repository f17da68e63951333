using System.Text.RegularExpressions;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Notebooks;
using SplitBatch.Display.WriteUp;

namespace SplitBatch.Display.Browser;

/// <summary>Pages as a browser without a network shows them.</summary>
public partial class PageTests
{
    private static string Page(string head, params object[] shown)
    {
        NotebookDisplay.Register();
        var body = string.Concat(shown.Select(value => Formatter.ToDisplayString(value, "text/html")));
        return $"<!DOCTYPE html><html lang=\"en\"><head><meta "
            + $"charset=\"utf-8\"><title>t</title>{head}</head><body><main><h1>t</h1>{body}</main></body></html>";
    }

    [BrowserFact]
    public void With_the_library_in_the_head_charts_become_interactive()
    {
        var own = Plotly.NET.CSharp.Chart.Point<double, double, string>([1.0, 2.0], [3.0, 4.0]);
        var dom = Chromium.Dom(Page($"<script>{NotebookDisplay.ChartScript}</script>", Samples.Bars(), Samples.Intervals(), own));
        Assert.Equal(3, Plot().Count(dom));
    }

    [BrowserFact]
    public void With_the_library_in_the_head_of_a_page_with_a_module_loader_too()
    {
        const string loader = "<script>window.define=function(){window.wrongly=true};window.define.amd={}</script>";
        var dom = Chromium.Dom(Page($"{loader}<script>{NotebookDisplay.ChartScript}</script>", Samples.Bars()));
        Assert.Equal(1, Plot().Count(dom));
    }

    [BrowserFact]
    public void Without_the_library_the_picture_stays()
    {
        var dom = Chromium.Dom(Page("", Samples.Bars()));
        Assert.Equal(0, Plot().Count(dom));
        Assert.Contains("13 and more: difference shown", dom, StringComparison.Ordinal);
    }

    [BrowserFact]
    public void An_embedded_copy_of_the_library_draws_a_chart_of_ones_own()
    {
        NotebookDisplay.Register(new NotebookDisplayOptions { EmbedLibrary = true });
        var html = Formatter.ToDisplayString(Plotly.NET.CSharp.Chart.Point<double, double, string>([1.0, 2.0], [3.0, 4.0]), "text/html");
        NotebookDisplay.Register();
        Assert.Equal(1, Plot().Count(Chromium.Dom($"<!DOCTYPE html><html><head><title>t</title></head><body>{html}</body></html>")));
    }

    [AccessibilityFact]
    public void A_write_up_has_no_serious_finding_at_page_and_phone_width()
    {
        Assert.Empty(Axe.Serious(SampleDocument.Create().ToHtml(), 1000));
        Assert.Empty(Axe.Serious(SampleDocument.Create().ToHtml(), 500));
    }

    [AccessibilityFact]
    public void Figures_tables_and_results_in_a_notebook_page_have_no_serious_finding() =>
        Assert.Empty(
            Axe.Serious(Page("", Samples.Bars(), Samples.Intervals().Numbers, Bitterness.BitternessUnits.From(31.5),
                SampleDocument.Create().Summary!), 1000));

    [GeneratedRegex("class=\"plot-container plotly\"")]
    private static partial Regex Plot();
}
