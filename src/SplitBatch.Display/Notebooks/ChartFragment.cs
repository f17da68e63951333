using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.WriteUp;

namespace SplitBatch.Display.Notebooks;

/// <summary>
/// The piece of HTML that shows a chart in a notebook or a page. A figure's piece holds its picture for page and phone as
/// images, which also show where a notebook is not trusted and scripts, styles and drawings are taken out of its HTML;
/// where the chart library is found, the picture for the page becomes interactive. The pictures lie on paper of their own;
/// words beside them take the colours of the notebook, which may be dark.
/// </summary>
internal static class ChartFragment
{
    /// <summary>A figure with its picture, its numbers, and its interactive form where that could be made.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="plotlyJson">The interactive form, or null where Plotly.NET does not load.</param>
    /// <param name="options">Where the chart library is.</param>
    public static string Of(Figure figure, string? plotlyJson, NotebookDisplayOptions options)
    {
        var id = Id(figure.AltText + plotlyJson + figure.ToSvg());
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"split-batch-chart\" data-chart=\"{id}\" style=\"max-width:760px;margin:0.5em 0\">\n");
        html.Append(Stills(figure.ToSvg(), figure.ToSvg(360), figure.AltText));
        if (plotlyJson is null) html.Append(CultureInfo.InvariantCulture, $"<p style=\"font-size:13px\">{Xml.Text(NoPlotly)}</p>\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<details style=\"font-size:14px\"><summary>The numbers behind this "
                + $"chart</summary>{HtmlTable.Write(figure.Numbers, 200)}</details>\n</div>\n");
        if (plotlyJson is not null) html.Append(Script(id, plotlyJson, options));
        return html.ToString();
    }

    /// <summary>A chart made directly with Plotly.NET.</summary>
    public static string Of(string plotlyJson, NotebookDisplayOptions options)
    {
        var id = Id(plotlyJson);
        return $"<div class=\"split-batch-chart\" data-chart=\"{id}\" style=\"max-width:900px\"><div class=\"split-batch-page\" "
            + $"style=\"font-size:14px;color:{Theme.Quiet};background:{Theme.Paper}\">" +
            $"{Xml.Text(NoLibrary)}</div></div>\n{Script(id, plotlyJson, options)}";
    }

    /// <summary>The summary of a trial: square on a phone.</summary>
    public static string Of(SummaryPicture picture) =>
        $"<div class=\"split-batch-chart\" "
            + $"style=\"max-width:960px\">\n{Stills(picture.ToSvg(), picture.ToSvg(PictureShape.Square), picture.AltText)}</div>\n";

    private static string Stills(string page, string phone, string words) =>
        $"{Css}<div class=\"split-batch-page\" style=\"background:{Theme.Paper}\">{Still(page, words)}</div>\n" +
        $"<div class=\"split-batch-phone\" style=\"display:none;background:{Theme.Paper}\">{Still(phone, words)}</div>\n";

    private static string Still(string svg, string words) =>
        $"<img style=\"max-width:100%;height:auto\" alt=\"{Xml.Text(words)}\" "
            + $"src=\"data:image/svg+xml;base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(svg))}\">";

    private const string Css =
        "<style>@media(max-width:480px){.split-batch-page{display:none}.split-batch-phone{display:block!important}}</style>\n";

    public const string NoPlotly =
        "This is the chart as a picture. The interactive form needs Plotly.NET, which this kernel cannot load (it brings another version "
            + "of FSharp.Core). " +
        "The SplitBatch kernel draws it: splitbatch kernel install.";

    private const string NoLibrary =
        "This chart needs the library plotly.js, which was not found on this page. Run the notebook with the SplitBatch kernel, or make a "
            + "page of it with splitbatch run and keep charts.js beside the page; both work offline.";

    private static string Id(string content) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)))[..16];

    private static string Script(string id, string plotlyJson, NotebookDisplayOptions options)
    {
        var json = plotlyJson.Replace("<", "\\u003c", StringComparison.Ordinal).Replace("\u2028", "\\u2028", StringComparison.Ordinal)
            .Replace("\u2029", "\\u2029", StringComparison.Ordinal);
        var place = options.KernelName is { } name
            ? JsonSerializer.Serialize($"kernelspecs/{Uri.EscapeDataString(name)}/plotly.min.js")
            : "null";
        var embedded = options.EmbedLibrary ? $"if(!window.Plotly){{{ChartLibrary.Script}}}\n" : "";
        return $"<script>\n{embedded}"
            + $"{Loader.Replace("$ID", id, StringComparison.Ordinal).Replace("$PLACE", place, StringComparison.Ordinal)}("
            + $"{json});\n</script>\n";
    }

    /// <summary>
    /// Finds the library (loaded already; else beside the kernel's description on the Jupyter server), then draws every piece with this
    /// id.
    /// </summary>
    internal const string Loader = """
        (function(chart){
        function base(){var b=document.body&&document.body.dataset.baseUrl;if(b)return b;var c=document.getElementById('jupyter-config-data');if(!c)return null;try{return JSON.parse(c.textContent).baseUrl||null}catch(e){return null}}
        function find(){if(window.Plotly)return Promise.resolve(window.Plotly);if(window.splitBatchPlotly)return window.splitBatchPlotly;
        var place=$PLACE,b=base();if(!place||!b)return Promise.reject();
        return window.splitBatchPlotly=fetch(b.replace(/\/?$/,'/')+place).then(function(r){if(!r.ok)throw 0;return r.text()}).then(function(t){new Function('define','module','exports',t).call(window);return window.Plotly})}
        function draw(P){document.querySelectorAll('[data-chart="$ID"] .split-batch-page').forEach(function(page){

        """ + Draw + """
        })}
        function start(){find().then(draw).catch(function(){window.addEventListener('load',function(){if(window.Plotly)draw(window.Plotly)})})}
        if(document.readyState==='loading')document.addEventListener('DOMContentLoaded',start);else start();
        })
        """;

    /// <summary>Draws <c>chart</c> with the library <c>P</c> into <c>page</c>; the picture goes when the drawing is there.</summary>
    internal const string Draw = """
        if(page.dataset.drawn||!page.clientWidth)return;page.dataset.drawn='1';
        var still=Array.prototype.slice.call(page.childNodes),live=document.createElement('div');page.appendChild(live);
        P.newPlot(live,chart.data,chart.layout,{displayModeBar:false,responsive:true}).then(function(){still.forEach(function(n){n.remove()})},function(){live.remove()})
        """;
}
