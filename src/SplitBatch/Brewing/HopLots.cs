namespace SplitBatch.Brewing;

/// <summary>The lots in the cold store, found by name.</summary>
public sealed class HopLots
{
    private readonly Dictionary<string, HopLot> byName;

    /// <summary>A store of lots with different names; case does not matter.</summary>
    /// <exception cref="ArgumentException">Two lots share a name.</exception>
    public HopLots(IEnumerable<HopLot> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        byName = new(StringComparer.OrdinalIgnoreCase);
        foreach (var lot in lots)
        {
            if (!byName.TryAdd(lot.Name, lot)) throw new ArgumentException($"Two hop lots are called \"{lot.Name}\"; give each its own name.", nameof(lots));
        }
    }

    /// <summary>All lots, in the order given.</summary>
    public IReadOnlyCollection<HopLot> All => byName.Values;

    /// <summary>The lot of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none; the message names the nearest and lists what there is.</exception>
    public HopLot this[string name]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(name);
            if (byName.TryGetValue(name.Trim(), out var lot)) return lot;
            if (byName.Count == 0) throw new KeyNotFoundException($"There is no hop lot \"{name}\"; there are no lots at all.");
            var nearest = byName.Keys.MinBy(key => Distance(key.ToUpperInvariant(), name.ToUpperInvariant()))!;
            throw new KeyNotFoundException($"There is no hop lot \"{name}\". The nearest name is \"{nearest}\". The lots are: {string.Join(", ", byName.Keys)}.");
        }
    }

    /// <summary>Edit distance: the fewest letters to insert, remove or change (Levenshtein 1966).</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var (corner, _) = (row[0], row[0] = i);
            for (var j = 1; j <= b.Length; j++)
            {
                var substituted = corner + (a[i - 1] == b[j - 1] ? 0 : 1);
                corner = row[j];
                row[j] = Math.Min(substituted, Math.Min(row[j - 1], row[j]) + 1);
            }
        }

        return row[b.Length];
    }
}
