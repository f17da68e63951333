using System.Text.RegularExpressions;

namespace SplitBatch.Kernel.Pages;

/// <summary>
/// Keeps ids unique on a page whose pieces were made one by one: headings of the same words, footnotes of several cells.
/// </summary>
internal sealed partial class PageIds
{
    private readonly HashSet<string> taken = [];

    /// <summary>The piece as it is, or with the cell's number behind its ids and its links to them where one is taken already.</summary>
    public string MakeUnique(string html, int cell)
    {
        var own = Id().Matches(html).Select(m => m.Groups["id"].Value).ToHashSet();
        if (own.Any(taken.Contains))
        {
            html = Id().Replace(html, m => $" id=\"{m.Groups["id"].Value}-{cell}\"");
            html = Link().Replace(html, m => own.Contains(m.Groups["id"].Value) ? $"href=\"#{m.Groups["id"].Value}-{cell}\"" : m.Value);
            own = [.. own.Select(id => $"{id}-{cell}")];
        }

        taken.UnionWith(own);
        return html;
    }

    [GeneratedRegex(" id=\"(?<id>[^\"]+)\"")]
    private static partial Regex Id();

    [GeneratedRegex("href=\"#(?<id>[^\"]+)\"")]
    private static partial Regex Link();
}
