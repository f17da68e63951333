namespace SplitBatch;

/// <summary>Finds the name that was probably meant when one is misspelt.</summary>
internal static class Nearest
{
    /// <summary>A sentence that offers the nearest name, or null when none is near.</summary>
    public static string? Suggestion(string typed, IEnumerable<string> known) =>
        Name(typed, known) is { } name ? $"Did you mean \"{name}\"?" : null;

    /// <summary>The nearest of the known names, or null when none is within about a third of its letters.</summary>
    public static string? Name(string typed, IEnumerable<string> known)
    {
        var best = known.Select(name => (name, distance: Distance(Fold(typed), Fold(name)))).OrderBy(pair => pair.distance).FirstOrDefault();
        return best.name is not null && best.distance <= Math.Max(1, Math.Max(typed.Length, best.name.Length) / 3) ? best.name : null;
    }

    private static string Fold(string text) => text.Trim().ToUpperInvariant();

    /// <summary>The number of single-letter changes between two texts. Ref.: Levenshtein 1966, Soviet Physics Doklady 10, 707-710.</summary>
    private static int Distance(string left, string right)
    {
        var previous = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var current = new int[right.Length + 1];
            current[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var change = left[i - 1] == right[j - 1] ? 0 : 1;
                current[j] = Math.Min(Math.Min(current[j - 1], previous[j]) + 1, previous[j - 1] + change);
            }

            previous = current;
        }

        return previous[^1];
    }
}
