using SplitBatch.Panel.Protocols;

namespace SplitBatch.Series;

/// <summary>One number for one brew, with the variance that its own panel or laboratory gives it.</summary>
/// <param name="Value">The number: zero where there is no difference.</param>
/// <param name="Variance">Its variance, above zero.</param>
public readonly record struct BrewNumber(double Value, double Variance)
{
    /// <summary>
    /// The log-odds of a panel's right answers above those of guessing. On this scale brews that differ scatter evenly, which shares do
    /// not: they are squeezed at both ends, and t over them errs in 6 to 8 of 100 at 5 % where brews differ much.
    /// </summary>
    /// <param name="protocol">A one-sided protocol with a known guessing chance, the same for all brews.</param>
    /// <param name="sets">Sets tasted, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>; for a directed pair, answers for the expected beer.</param>
    /// <remarks>
    /// ln((x + 1/2)/(n - x + 1/2)) - ln(g/(1 - g)), variance 1/(x + 1/2) + 1/(n - x + 1/2). Ref. J. B. S. Haldane (1956), Ann. Hum.
    /// Genet. 20, 309, for the halves (from memory).
    /// </remarks>
    /// <exception cref="ArgumentException">The protocol is two-sided.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static BrewNumber FromCount(Protocol protocol, int sets, int right)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.Positive(sets);
        Guard.InRange(right, 0, sets);
        if (protocol.Sides == 2)
            throw new ArgumentException("The protocol is two-sided, so its answers have no direction; use the directed form of the pair.",
                nameof(protocol));
        double yes = right + 0.5, no = sets - right + 0.5;
        return new(Math.Log(yes / no) - Math.Log(protocol.Chance / (1 - protocol.Chance)), (1 / yes) + (1 / no));
    }

    /// <summary>A measured difference, such as the laboratory's, always B less A.</summary>
    /// <param name="difference">In its own unit, the same for all brews.</param>
    /// <param name="standardError">Above zero, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static BrewNumber FromDifference(double difference, double standardError) =>
        new(Guard.InRange(difference, double.MinValue, double.MaxValue), Guard.Positive(standardError) * standardError);

    /// <summary>The share of right answers that a number made by <see cref="FromCount"/> stands for.</summary>
    /// <param name="protocol">The protocol of the count.</param>
    /// <param name="value">Any number on that scale.</param>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double ShareRight(Protocol protocol, double value)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return 1 / (1 + ((1 - protocol.Chance) / protocol.Chance * Math.Exp(-value)));
    }
}
