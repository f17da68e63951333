using System.Globalization;
using SplitBatch.Panel.Protocols;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>A control set whose difference is known: could this panel, on this day, have told?</summary>
/// <remarks>
/// In the same sitting, by the same protocol and keyed in the same way, each taster gets one set of A against A with a declared addition.
/// A panel that does not tell it has not shown that it could have told anything, and rules nothing out. Asking for both keeps beta, since
/// two things together are no likelier than the one. A gross control proves only attention; control first teaches the tasters.
/// <para>Ref. assay sensitivity: ICH E10 (2000), Choice of Control Group, 1.5 (from memory; a secondary account was read).</para>
/// </remarks>
public sealed record KnownControl
{
    private KnownControl()
    {
    }

    /// <summary>The protocol, that of the panel.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>Control sets answered, one for each taster.</summary>
    public required int Sets { get; init; }

    /// <summary>Right answers.</summary>
    public required int Right { get; init; }

    /// <summary>The chance of passing by guessing alone.</summary>
    public required double Alpha { get; init; }

    /// <summary>The chance of so many right answers, or more, by guessing alone.</summary>
    public double PValue => ExactBinomial.AtLeast(Right, Sets, Protocol.Chance);

    /// <summary>The smallest count that passes; null where so few sets cannot.</summary>
    public int? CriticalCount => ExactBinomial.CriticalCount(Sets, Protocol.Chance, Alpha) is var count && count <= Sets ? count : null;

    /// <summary>Whether the panel told the control.</summary>
    public bool Passed => Right >= CriticalCount;

    /// <summary>Counts a control.</summary>
    /// <param name="protocol">A one-sided protocol with a known guessing chance.</param>
    /// <param name="sets">Control sets answered, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <param name="alpha">The chance of passing by guessing alone, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The protocol is two-sided: a control has a right answer.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static KnownControl Of(Protocol protocol, int sets, int right, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, sets);
        _ = protocol.Chance;
        if (protocol.Sides == 2)
            throw new ArgumentException("A control has a right answer; use the directed form of the pair.", nameof(protocol));
        return new() { Protocol = protocol, Sets = sets, Right = right, Alpha = Guard.OpenShare(alpha) };
    }

    /// <summary>
    /// The exact chance that the control was told by so many more tasters than the halves, if it were no easier: McNemar's test,
    /// one-sided.
    /// </summary>
    /// <param name="onlyControl">Tasters who were right on the control and wrong on the halves, zero or more.</param>
    /// <param name="onlyTest">Tasters who were right on the halves and wrong on the control, zero or more.</param>
    /// <returns>P(Bin(b + c, 1/2) &gt;= c); at or below alpha it says that the halves lie closer than the control. 1 where all answered
    /// both alike.</returns>
    /// <remarks>Ref. Q. McNemar (1947), Psychometrika 12, 153 (from memory); the exact form is the binomial.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static double AgainstTest(int onlyControl, int onlyTest) =>
        ExactBinomial.AtLeast(Guard.NotNegative(onlyControl), onlyControl + Guard.NotNegative(onlyTest), 0.5);

    /// <summary>For example <c>control: 18 right of 24 (triangle), 13 needed: passed.</c></summary>
    public override string ToString() =>
        $"control: {Right} right of {Sets} ({Protocol.Name}), {CriticalCount?.ToString(CultureInfo.InvariantCulture) ?? "more sets"} "
            + $"needed: {(Passed ? "passed" : "not passed")}.";
}
