using System.Text.RegularExpressions;

namespace SplitBatch.Display.Notebooks;

/// <summary>
/// Charts on pages that lie in a folder together: each page holds its charts as pictures and as data, one script file beside the pages
/// holds the library and draws them. Without that file the pictures stay.
/// </summary>
internal static partial class PageCharts
{
    /// <summary>The script file: the chart library, and what draws every chart of a page.</summary>
    public static string Script => $$"""
        {{ChartLibrary.Script}}
        (function(P){document.querySelectorAll('script[data-chart-of]').forEach(function(data){var chart=JSON.parse(data.textContent);
        document.querySelectorAll('[data-chart="'+data.dataset.chartOf+'"] .split-batch-page').forEach(function(page){
        {{ChartFragment.Draw}}
        })})})(window.Plotly);

        """;

    /// <summary>The HTML with each chart's script replaced by the chart's data, which no policy forbids.</summary>
    /// <param name="html">What a chart shows itself as.</param>
    public static string WithoutScripts(string html) =>
        html.Contains("split-batch-chart", StringComparison.Ordinal)
            ? Inline()
                .Replace(html,
                    match => $"<script type=\"application/json\" "
                        + $"data-chart-of=\"{match.Groups["id"].Value}\">{match.Groups["data"].Value}</script>")
            : html;

    /// <summary>The loader with a chart in it; the data hold no angle bracket, because every one is written as its code.</summary>
    [GeneratedRegex(@"<script>\n(?:if\(!window\.Plotly\)[^\n]*\n\}\)\.call\(window\);\}\n)?\(function\(chart\)\{\n"
        + @"[^<]*?\[data-chart=""(?<id>[0-9a-f]+)""\][^<]*?\n\}\)\((?<data>\{[^<]*)\);\n</script>")]
    private static partial Regex Inline();
}
