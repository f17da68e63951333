namespace SplitBatch.Panel.Planning;

/// <summary>The counts of right answers at which a margin is ruled out.</summary>
/// <param name="Lowest">The lowest, inclusive; 0 where nothing bounds it from below.</param>
/// <param name="Highest">The highest, inclusive.</param>
public readonly record struct CountRange(int Lowest, int Highest)
{
    /// <summary>Whether a count lies in the range.</summary>
    public bool Contains(int count) => count >= Lowest && count <= Highest;

    /// <summary>The counts that lie in both ranges; null where there are none.</summary>
    public CountRange? And(CountRange other)
    {
        var both = new CountRange(Math.Max(Lowest, other.Lowest), Math.Min(Highest, other.Highest));
        return both.Lowest <= both.Highest ? both : null;
    }

    /// <summary>For example <c>28 to 32</c>.</summary>
    public override string ToString() => $"{Lowest} to {Highest}";
}
