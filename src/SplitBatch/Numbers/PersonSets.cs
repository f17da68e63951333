namespace SplitBatch.Numbers;

/// <summary>Sets that one person tasted, all with the same guessing chance.</summary>
/// <param name="Sets">How many, at least 1.</param>
/// <param name="Chance">The chance that a pure guess is right, above 0 and below 1.</param>
public readonly record struct SetsAtChance(int Sets, double Chance);

/// <summary>All that one person tasted, whatever the protocols: sets of one guessing chance, or of several.</summary>
public sealed record PersonSets
{
    /// <summary>One person's sets.</summary>
    /// <param name="kinds">At least one kind of set.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public PersonSets(params IEnumerable<SetsAtChance> kinds)
    {
        ArgumentNullException.ThrowIfNull(kinds);
        Kinds = [.. kinds];
        if (Kinds.Count == 0) throw new ArgumentException("A person without a set has nothing to be counted.", nameof(kinds));
        foreach (var kind in Kinds)
        {
            Guard.Positive(kind.Sets, nameof(kinds));
            Guard.OpenShare(kind.Chance, nameof(kinds));
        }
    }

    /// <summary>The kinds of set.</summary>
    public IReadOnlyList<SetsAtChance> Kinds { get; }

    /// <summary>Sets in all.</summary>
    public int Sets => Kinds.Sum(kind => kind.Sets);

    /// <summary>The right answers that guessing gives on average.</summary>
    public double ByGuessing => Kinds.Sum(kind => kind.Sets * kind.Chance);

    /// <summary>So many people who all tasted as many sets of one guessing chance.</summary>
    /// <param name="people">At least 1.</param>
    /// <param name="sets">Sets for each, at least 1.</param>
    /// <param name="chance">The guessing chance, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static IReadOnlyList<PersonSets> Alike(int people, int sets, double chance) =>
        [.. Enumerable.Repeat(new PersonSets(new SetsAtChance(sets, chance)), Guard.Positive(people))];
}
