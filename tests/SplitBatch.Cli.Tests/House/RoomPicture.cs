using System.Text;

namespace SplitBatch.Cli.House;

/// <summary>
/// Draws the folders of <c>src</c> as Mermaid diagrams for DEVELOPERS.md, one for each project. An arrow that follows from others
/// (A looks into B, B into C, so A may look into C) is left out, so that the picture can be read.
/// </summary>
internal static class RoomPicture
{
    private const string Start = "<!-- rooms: drawn by ArrowTests -->", End = "<!-- end of rooms -->";

    /// <summary>The text with its pictures drawn anew.</summary>
    public static string Into(string text, SourceArrows source)
    {
        int from = text.IndexOf(Start, StringComparison.Ordinal) + Start.Length, to = text.IndexOf(End, StringComparison.Ordinal);
        Assert.True(to > from, $"DEVELOPERS.md needs the marks {Start} and {End}.");
        var drawn = source.Folders.GroupBy(folder => folder.Split('/')[0])
            .Select(project => Diagram(project.Key, [.. project],
                source.Arrows.Keys.Where(arrow => Of(arrow.From) == project.Key && Of(arrow.To) == project.Key)));
        return text[..from] + "\n" + string.Concat(drawn) + text[to..];

        static string Of(string folder) => folder.Split('/')[0];
    }

    private static string Diagram(string project, IReadOnlyList<string> folders, IEnumerable<(string From, string To)> arrows)
    {
        var known = arrows.ToHashSet();
        var text = new StringBuilder("\n```mermaid\nflowchart BT\n");
        foreach (var room in folders.Where(folder => folder != project).GroupBy(folder => folder.Split('/')[1]))
        {
            var many = room.Count() > 1;
            if (many) text.Append($"  subgraph {Id(room.First())}_room[\"{room.Key}\"]\n");
            foreach (var folder in room) text.Append($"{(many ? "    " : "  ")}{Id(folder)}[\"{Label(folder, project, many)}\"]\n");
            if (many) text.Append("  end\n");
        }

        if (folders.Contains(project)) text.Append($"  {Id(project)}([\"{project}\"])\n");
        foreach (var (from, to) in known.Where(arrow => !Follows(arrow, known)).OrderBy(arrow => arrow.From, StringComparer.Ordinal)
            .ThenBy(arrow => arrow.To, StringComparer.Ordinal))
        {
            text.Append($"  {Id(from)} --> {Id(to)}\n");
        }

        return text.Append("```\n").ToString();
    }

    /// <summary>Whether an arrow's end is reached from its start by other arrows.</summary>
    private static bool Follows((string From, string To) arrow, HashSet<(string From, string To)> arrows)
    {
        var ways = new Queue<string>(arrows.Where(other => other.From == arrow.From && other.To != arrow.To).Select(other => other.To));
        var seen = new HashSet<string>();
        while (ways.TryDequeue(out var at))
        {
            if (at == arrow.To) return true;
            if (!seen.Add(at)) continue;
            foreach (var other in arrows.Where(other => other.From == at)) ways.Enqueue(other.To);
        }

        return false;
    }

    private static string Id(string folder) => folder.Replace('/', '_').Replace('.', '_');

    private static string Label(string folder, string project, bool many)
    {
        var path = folder[(project.Length + 1)..];
        return !many ? path : path.Contains('/', StringComparison.Ordinal)
            ? path[(path.IndexOf('/', StringComparison.Ordinal) + 1)..]
            : $"{path} itself";
    }
}
