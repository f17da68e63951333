namespace SplitBatch.Panel;

/// <summary>One taster's sets and right answers. No name: nobody needs to be shown up.</summary>
/// <param name="Sets">Sets tasted, at least 1.</param>
/// <param name="Correct">Right answers, from 0 to <paramref name="Sets"/>.</param>
public readonly record struct TasterCount(int Sets, int Correct)
{
    /// <summary>The counts as an array, each checked.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets.</exception>
    internal static TasterCount[] Checked(IEnumerable<TasterCount> tasters)
    {
        ArgumentNullException.ThrowIfNull(tasters);
        TasterCount[] counts = [.. tasters];
        if (counts.Length == 0) throw new ArgumentException("There are no tasters to count.", nameof(tasters));
        foreach (var count in counts) Counts.Check(count.Correct, count.Sets);
        return counts;
    }
}
