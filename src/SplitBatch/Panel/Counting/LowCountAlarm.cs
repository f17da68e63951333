using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Is a count so far below chance that something must be wrong: the key, the codes, the direction, or the question as it was read?
/// </summary>
/// <remarks>
/// Guesses are independent whoever makes them, so pooled repeats may be asked too. A scrambled key that yields as many right answers as
/// guessing is invisible to it. A two-sided protocol expects no answer, and never raises it.
/// </remarks>
public sealed record LowCountAlarm
{
    /// <summary>The level that is used unless another was declared: one false alarm in a hundred panels that guess.</summary>
    public const double DefaultLevel = Power.AlarmLevel;

    private LowCountAlarm()
    {
    }

    /// <summary>The protocol.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>Sets answered.</summary>
    public required int Sets { get; init; }

    /// <summary>Right answers.</summary>
    public required int Right { get; init; }

    /// <summary>The chance of a false alarm when all guess is at most this.</summary>
    public required double Level { get; init; }

    /// <summary>The chance of so few right answers, or fewer, by guessing alone.</summary>
    public double PValue => ExactBinomial.AtMost(Right, Sets, Protocol.Chance);

    /// <summary>The largest count that raises the alarm; -1 where none does.</summary>
    public int LargestCount => Protocol.Sides == 2 ? -1 : ExactBinomial.LargestCount(Sets, Protocol.Chance, Level);

    /// <summary>Whether the alarm is raised. Then nothing but the count itself may be stated.</summary>
    public bool IsRaised => Right <= LargestCount;

    /// <summary>Looks at a count.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1; repeats by one taster may be among them.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <param name="level">The largest chance of a false alarm, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static LowCountAlarm Of(Protocol protocol, int sets, int right, double level = DefaultLevel)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, sets);
        _ = protocol.Chance;
        return new() { Protocol = protocol, Sets = sets, Right = right, Level = Guard.OpenShare(level) };
    }

    /// <summary>
    /// For example <c>15 right of 60 (paired directional): guessing gives so few in 0.0067 % of panels. The key, the codes or the
    /// direction must be looked at; nothing else is concluded.</c>
    /// </summary>
    public override string ToString() =>
        $"{Right} right of {Sets} ({Protocol.Name}): guessing gives so few in {Printed.Percent(PValue)} of panels. "
            + (IsRaised ? "The key, the codes or the direction must be looked at; nothing else is concluded." : "That is no alarm.");
}
