namespace SplitBatch.Cli.House;

/// <summary>
/// Finds arrows that run in a circle. Folders are compared level by level: within each folder, every folder below it counts with all that
/// it holds, and the files of the folder itself count as one more. If no level has a circle, no two folders anywhere look into each other.
/// </summary>
internal static class Cycles
{
    /// <summary>What stands for the files of a folder itself among the folders below it.</summary>
    private const string Own = "(its own files)";

    /// <summary>Every circle found, as a line that names the folders and one arrow of each step.</summary>
    public static IEnumerable<string> In(IReadOnlyDictionary<(string From, string To), string> arrows) =>
        arrows.GroupBy(arrow => Shared(arrow.Key.From, arrow.Key.To)).SelectMany(level => Level(level.Key, level));

    private static IEnumerable<string> Level(string folder, IEnumerable<KeyValuePair<(string From, string To), string>> arrows)
    {
        var steps = arrows.GroupBy(arrow => (From: Child(folder, arrow.Key.From), To: Child(folder, arrow.Key.To)))
            .ToDictionary(group => group.Key, group => group.First().Value);
        var next = steps.Keys.ToLookup(step => step.From, step => step.To);
        var told = new HashSet<string>();
        foreach (var start in steps.Keys.Select(step => step.From).Distinct().Order(StringComparer.Ordinal))
        {
            if (told.Contains(start) || Way(start, next) is not { } way) continue;
            told.UnionWith(way);
            yield return $"{folder}: " + string.Join("; ", way.Zip(way.Skip(1), (a, b) => $"{a} -> {b} ({steps[(a, b)]})"));
        }
    }

    /// <summary>The shortest way from a folder back to itself, or null when there is none.</summary>
    private static List<string>? Way(string start, ILookup<string, string> next)
    {
        var ways = new Queue<List<string>>([[start]]);
        var seen = new HashSet<string>();
        while (ways.TryDequeue(out var way))
        {
            foreach (var step in next[way[^1]])
            {
                if (step == start) return [.. way, step];
                if (seen.Add(step)) ways.Enqueue([.. way, step]);
            }
        }

        return null;
    }

    private static string Shared(string from, string to)
    {
        var common = from.Split('/').Zip(to.Split('/')).TakeWhile(pair => pair.First == pair.Second).Select(pair => pair.First);
        return string.Join('/', common);
    }

    private static string Child(string folder, string path)
    {
        var rest = folder.Length == 0 ? path : path[folder.Length..].TrimStart('/');
        return rest.Length == 0 ? Own : rest.Split('/')[0];
    }
}
