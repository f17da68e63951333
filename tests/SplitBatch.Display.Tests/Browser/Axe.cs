using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace SplitBatch.Display.Browser;

/// <summary>The accessibility rules of axe-core, run on a page in the browser.</summary>
internal static partial class Axe
{
    private static readonly Lazy<string?> Found = new(() =>
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = Path.Combine(folder.FullName, "tests", "accessibility", "node_modules", "axe-core", "axe.min.js");
            if (File.Exists(file)) return File.ReadAllText(file);
        }

        return null;
    });

    public static string? Script => Found.Value;

    /// <summary>Every finding of a page that is serious or worse, as <c>rule: what it is about</c>.</summary>
    public static IReadOnlyList<string> Serious(string html, int width)
    {
        var script = (Script ?? throw new InvalidOperationException("axe-core is not installed: run npm ci in tests/accessibility."))
            .Replace("</script", "<\\/script", StringComparison.OrdinalIgnoreCase);
        const string run = """
            axe.run(document).then(function(r){var p=document.createElement('pre');p.id='axe-result';
            p.textContent=JSON.stringify({passes:r.passes.length,violations:r.violations.map(function(v){return {id:v.id,impact:v.impact,target:String(v.nodes[0].target),why:v.nodes[0].failureSummary}})});document.body.appendChild(p)})
            """;
        var dom =
            Chromium.Dom(html.Replace("</body>", $"<script>{script}</script><script>{run}</script></body>", StringComparison.Ordinal),
                width, 15_000);
        var result = Result().Match(dom);
        Assert.True(result.Success, "axe gave no result");
        using var json = JsonDocument.Parse(WebUtility.HtmlDecode(result.Groups[1].Value));
        Assert.True(json.RootElement.GetProperty("passes").GetInt32() > 5, "axe checked next to nothing");
        return [.. json.RootElement.GetProperty("violations").EnumerateArray()
            .Where(v => v.GetProperty("impact").GetString() is "serious" or "critical")
            .Select(v => $"{v.GetProperty("id").GetString()}: {v.GetProperty("target").GetString()} "
                + $"({v.GetProperty("why").GetString()})")];
    }

    [GeneratedRegex("<pre id=\"axe-result\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Result();
}
