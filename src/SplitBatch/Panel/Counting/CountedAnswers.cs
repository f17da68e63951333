using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>A count of answers under one protocol: what the test of a difference and the test against a margin start from.</summary>
public abstract record CountedAnswers
{
    private protected CountedAnswers()
    {
    }

    /// <summary>The protocol that was served.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>Sets tasted and answered.</summary>
    public required int Tasters { get; init; }

    /// <summary>Right answers; for a two-sided protocol, answers for the one beer.</summary>
    public required int Correct { get; init; }

    /// <summary>
    /// Each taster's repeats, where tasters had more than one set; null where each had one. Repeats by one taster are not new tasters.
    /// </summary>
    public ReplicatedTest? Repeats { get; init; }

    /// <summary>The count that is judged: <see cref="Correct"/>, or for a two-sided protocol that of the more frequent answer.</summary>
    public int Count => Protocol.Sides == 1 ? Correct : Math.Max(Correct, Tasters - Correct);

    /// <summary>For example <c>11 right of 20 (triangle)</c>.</summary>
    private protected string Opening => $"{(Protocol.Sides == 1 ? $"{Correct} right" : $"{Count} alike")} of {Tasters} ({Protocol.Name})";

    /// <summary>Refuses counts that cannot be, and a protocol without a known guessing chance.</summary>
    private protected static Protocol Checked(Protocol protocol, int tasters, int correct)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(correct, tasters);
        _ = protocol.Chance;
        return protocol;
    }
}

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
