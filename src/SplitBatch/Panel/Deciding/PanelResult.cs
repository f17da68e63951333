using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>
/// What a panel's ballots came to, as far as it decides: who was right how often, and what else has to be known about the count.
/// </summary>
public sealed record PanelResult
{
    /// <summary>What tasters answered.</summary>
    /// <param name="tasters">Each taster's counted sets and right answers (for a two-sided pair: answers for the one beer); at least one
    /// taster.</param>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets.</exception>
    public PanelResult(IEnumerable<TasterCount> tasters) => Tasters = TasterCount.Checked(tasters);

    /// <summary>Each taster's counted sets and right answers.</summary>
    public IReadOnlyList<TasterCount> Tasters { get; }

    /// <summary>Whether somebody saw the count before the end without a plan for it.</summary>
    public bool LookedEarly { get; init; }

    /// <summary>The control set's answers, where one was served.</summary>
    public KnownControl? Control { get; init; }

    /// <summary>
    /// Sets that were served and are missing: for each of <see cref="Tasters"/> in the same order, and then for each person who gave no
    /// ballot at all. Empty where none is missing.
    /// </summary>
    public IReadOnlyList<int> Missing { get; init; } = [];

    /// <summary>The same panel counted by other rules for late, double or excluded ballots.</summary>
    public IReadOnlyList<OtherCount> OtherCounts { get; init; } = [];

    /// <summary>Sets counted.</summary>
    public int Sets => Tasters.Sum(taster => taster.Sets);

    /// <summary>Right answers among them.</summary>
    public int Right => Tasters.Sum(taster => taster.Correct);

    /// <summary>Whether somebody tasted more than one set.</summary>
    public bool HasRepeats => Tasters.Any(taster => taster.Sets > 1);

    /// <summary>A panel in which everybody tasted one set.</summary>
    /// <param name="tasters">Sets, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="missing">People who were served and gave no ballot, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    public static PanelResult Of(int tasters, int right, int missing = 0)
    {
        Counts.Check(right, tasters);
        Guard.NotNegative(missing);
        return new(Enumerable.Range(0, tasters).Select(i => new TasterCount(1, i < right ? 1 : 0)))
        {
            Missing = [.. Enumerable.Repeat(0, missing == 0 ? 0 : tasters), .. Enumerable.Repeat(1, missing)],
        };
    }

    /// <summary>The result if so many of the missing answers had been right and the others wrong.</summary>
    internal PanelResult WithMissingRight(int right)
    {
        var filled = Missing.Select((missing, i) =>
        {
            var has = i < Tasters.Count ? Tasters[i] : default;
            var given = Math.Min(missing, right);
            right -= given;
            return new TasterCount(has.Sets + missing, has.Correct + given);
        }).ToArray();
        return new([.. filled.Where(taster => taster.Sets > 0), .. Tasters.Skip(filled.Length)])
        {
            LookedEarly = LookedEarly,
            Control = Control,
        };
    }
}

/// <summary>A panel's count by another rule than the declared one.</summary>
/// <param name="Rule">The rule in words, for example <c>late ballots counted</c> or <c>last ballot of each double</c>.</param>
/// <param name="Tasters">Each taster's counted sets and right answers by that rule.</param>
public sealed record OtherCount(string Rule, IReadOnlyList<TasterCount> Tasters);
