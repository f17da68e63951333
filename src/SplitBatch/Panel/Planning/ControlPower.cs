using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>How likely a panel is to tell a control whose d-prime is known.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Sets">Control sets, one for each taster.</param>
/// <param name="DPrime">The control's distance in units of the noise of one tasting.</param>
/// <param name="CriticalCount">The smallest count that passes; null where so few sets cannot.</param>
/// <param name="Chance">The chance of passing.</param>
public sealed record ControlPower(Protocol Protocol, int Sets, double DPrime, int? CriticalCount, double Chance)
{
    /// <summary>Finds the chance.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Control sets, one for each taster, at least 1.</param>
    /// <param name="dPrime">The control's distance, above 0; near the margin, so that to tell it means something.</param>
    /// <param name="alpha">The chance of passing by guessing alone, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static ControlPower Of(Protocol protocol, int sets, double dPrime, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var share = protocol.Discriminators(protocol.CorrectShare(Guard.Positive(dPrime)));
        return new(protocol, sets, dPrime, Power.CriticalCount(protocol, sets, alpha), Power.Of(protocol, sets, alpha, share));
    }

    /// <summary>For example <c>24 tasters tell a control of d-prime 2 (triangle) in 80 % of panels.</c></summary>
    public override string ToString() =>
        FormattableString.Invariant($"{Sets} tasters tell a control of d-prime {Printed.Chosen(DPrime)} ({Protocol.Name}) in ")
            + FormattableString.Invariant($"{Printed.Percent(Chance)} of panels.");
}
