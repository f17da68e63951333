using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>The price of looking at a fixed panel before its end and stopping at the first difference.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Alpha">The chance of a false difference that each look allows itself.</param>
/// <param name="Looks">The numbers of tasters after which the count is looked at, rising; the last is the whole panel.</param>
/// <param name="TrueAlpha">The chance of a false difference at one look or another, exactly.</param>
public sealed record EarlyLooks(Protocol Protocol, double Alpha, IReadOnlyList<int> Looks, double TrueAlpha)
{
    /// <summary>Computes the true chance of a false difference, by exact dynamic programming over counts.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance that each look allows itself, above 0 and below 1.</param>
    /// <param name="looks">Numbers of tasters, at least one, each at least 1, rising.</param>
    /// <exception cref="ArgumentOutOfRangeException">Alpha is not a share, or a look is before the first taster.</exception>
    /// <exception cref="ArgumentException">No looks, or they do not rise.</exception>
    public static EarlyLooks At(Protocol protocol, double alpha, params int[] looks)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(alpha);
        CountPath.Check(looks);
        var critical = looks.ToDictionary(n => n, n => Power.CriticalCount(protocol, n, alpha));
        return new(protocol, alpha, looks, CountPath.ChanceOfStopping(
            protocol.Chance, looks, (n, x) => (protocol.Sides == 1 ? x : Math.Max(x, n - x)) >= critical[n]));
    }

    /// <summary>
    /// For example <c>Looking after 10, 15 and 20 tasters and stopping at the first difference: a false one in 6.5 % of panels, not 5
    /// %.</c>
    /// </summary>
    public override string ToString()
    {
        var looks = Looks.Count == 1 ? $"{Looks[0]}" : $"{string.Join(", ", Looks.SkipLast(1))} and {Looks[^1]}";
        return $"Looking after {looks} tasters and stopping at the first difference: a false one in {Printed.ChosenPercent(TrueAlpha)} of "
            + $"panels (each look allows itself {Printed.ChosenPercent(Alpha)}).";
    }
}
