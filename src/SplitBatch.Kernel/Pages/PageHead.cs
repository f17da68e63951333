using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using SplitBatch.Display;

namespace SplitBatch.Kernel.Pages;

/// <summary>
/// What the outputs of a notebook ask of the head of their page: styles and scripts. Charts are drawn by one file beside the pages of a
/// run; a script that a cell put out itself may run because the page's policy names its hash; whatever else looks like a script, such as
/// one in prose, may not.
/// </summary>
internal sealed partial class PageHead
{
    /// <summary>The file beside the pages.</summary>
    public const string File = "charts.js";

    private readonly SortedSet<string> hashes = new(StringComparer.Ordinal);
    private readonly List<string> styles = [];
    private bool charts;

    /// <summary>Puts the script file beside the pages, unless it is there.</summary>
    public static void WriteBeside(string page)
    {
        var place = Path.Combine(Path.GetDirectoryName(page)!, File);
        if (!System.IO.File.Exists(place) || new FileInfo(place).Length != Encoding.UTF8.GetByteCount(NotebookDisplay.PageScript))
            System.IO.File.WriteAllText(place, NotebookDisplay.PageScript);
    }

    private static readonly string[] Charting = ["'self'", "file:"];

    /// <summary>Whether the page has charts that the file draws.</summary>
    public bool HasCharts => charts;

    /// <summary>What the policy says; empty where the page has no script.</summary>
    // A page opened from a disk is nobody's "self" in some browsers.
    public string Policy => string.Join(' ', (charts ? Charting : []).Concat(hashes));

    /// <summary>The styles, each once.</summary>
    public string Styles => string.Concat(styles.Distinct().Select(style => style + "\n"));

    /// <summary>The element that names the file, or nothing.</summary>
    public string Element => charts ? $"<script src=\"{File}\"></script>\n" : "";

    /// <summary>
    /// Takes in what a cell put out: its charts become data, its styles move to the head, its own scripts are named by their hash.
    /// </summary>
    public string Take(string html)
    {
        html = NotebookDisplay.ForPage(html.ReplaceLineEndings("\n"));
        styles.AddRange(Style().Matches(html).Select(match => match.Value));
        html = Style().Replace(html, "");
        charts |= html.Contains("data-chart-of=", StringComparison.Ordinal);
        foreach (Match script in Inline().Matches(html))
        {
            var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script.Groups["code"].Value)));
            if (!script.Groups["with"].Value.Contains("application/json", StringComparison.OrdinalIgnoreCase))
                hashes.Add($"'sha256-{hash}'");
        }

        return html;
    }

    [GeneratedRegex("<style>[^<]*</style>")]
    private static partial Regex Style();

    [GeneratedRegex("<script(?<with>[^>]*)>(?<code>.*?)</script", RegexOptions.Singleline | RegexOptions.IgnoreCase)]
    private static partial Regex Inline();
}
