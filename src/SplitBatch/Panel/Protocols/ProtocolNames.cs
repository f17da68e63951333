namespace SplitBatch.Panel.Protocols;

/// <summary>Reading protocol names as people write them, with help for those that are not known.</summary>
internal static class ProtocolNames
{
    /// <summary>Lower case, letters and digits only.</summary>
    public static string Plain(string? name) =>
        new((name ?? "").Where(char.IsAsciiLetterOrDigit).Select(char.ToLowerInvariant).ToArray());

    /// <summary>A sentence that names the nearest protocols and lists all.</summary>
    public static string Help(string? name)
    {
        var all = string.Join(", ", Protocol.All.Select(p => p.Name));
        var plain = Plain(name);
        if (plain.Length == 0) return $"The protocol is missing. Accepted: {all}.";
        var nearest = Protocol.All
            .Select(p => (p.Name, Distance: p.OtherNames.Prepend(p.Name).Min(n => Distance(plain, Plain(n)))))
            .OrderBy(p => p.Distance)
            .First();
        var hint = nearest.Distance <= Math.Max(2, plain.Length / 3) ? $" Did you mean \"{nearest.Name}\"?" : "";
        return $"\"{name}\" is not a protocol.{hint} Accepted: {all}.";
    }

    // Levenshtein's distance: the fewest letters put in, left out or changed.
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[b.Length];
    }
}
