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
        var best = known.Select(name => (name, distance: Distance(Fold(typed), Fold(name)))).OrderBy(pair => pair.distance)
            .FirstOrDefault();
        return best.name is not null && best.distance <= Math.Max(1, Math.Max(typed.Length, best.name.Length) / 3) ? best.name : null;
    }

    private static string Fold(string text) => text.Trim().ToUpperInvariant();

    /// <summary>
    /// The number of letters to add, drop, change or swap with their neighbour to get from one text to the other.
    /// Ref.: Damerau 1964, Communications of the ACM 7(3), 171-176.
    /// </summary>
    private static int Distance(string left, string right)
    {
        var steps = new int[left.Length + 1, right.Length + 1];
        for (var i = 0; i <= left.Length; i++) steps[i, 0] = i;
        for (var j = 0; j <= right.Length; j++) steps[0, j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            for (var j = 1; j <= right.Length; j++)
            {
                var change = left[i - 1] == right[j - 1] ? 0 : 1;
                steps[i, j] = Math.Min(Math.Min(steps[i - 1, j], steps[i, j - 1]) + 1, steps[i - 1, j - 1] + change);
                var swapped = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
                if (swapped) steps[i, j] = Math.Min(steps[i, j], steps[i - 2, j - 2] + 1);
            }
        }

        return steps[left.Length, right.Length];
    }
}
