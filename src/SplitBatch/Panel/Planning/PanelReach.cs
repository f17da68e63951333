using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>What a panel of the size at hand can detect and can rule out.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Tasters">Panel size.</param>
/// <param name="Alpha">The chance of showing a difference that is not there.</param>
/// <param name="Beta">The chance of ruling a margin out although it is true.</param>
/// <param name="Power">The chance wanted of finding what is there.</param>
/// <param name="CriticalCount">The right answers that show a difference; null where none do.</param>
/// <param name="Detects">The smallest share of discriminators that is shown with the power wanted; null where even a panel of
/// discriminators would not show it.</param>
/// <param name="DetectsDPrime">The same as d-prime.</param>
/// <param name="RulesOut">The smallest margin that is ruled out with the power wanted when in truth nobody discriminates.</param>
/// <param name="RulesOutDPrime">The same as d-prime.</param>
public sealed record PanelReach(
    Protocol Protocol, int Tasters, double Alpha, double Beta, double Power,
    int? CriticalCount, double? Detects, double? DetectsDPrime, double RulesOut, double RulesOutDPrime)
{
    /// <summary>Finds what a panel can do.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Panel size, at least 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="power">The chance wanted of finding what is there, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling a margin out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PanelReach Of(Protocol protocol, int tasters, double alpha = 0.05, double power = 0.80, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.OpenShare(power);
        Guard.OpenShare(beta);
        var critical = Planning.Power.CriticalCount(protocol, tasters, alpha);
        double? detects = critical is null ? null
            : Planning.Power.Of(protocol, tasters, alpha, 0) >= power ? 0
            : Root.Of(s => Planning.Power.Of(protocol, tasters, alpha, s) - power, 0, 1);
        var rulesOut = RuledOut(protocol, tasters, power, beta);
        return new(
            protocol, tasters, alpha, beta, power, critical, detects,
            detects is { } share ? protocol.DPrime(protocol.CorrectFromDiscriminators(share)) : null,
            rulesOut, protocol.DPrime(protocol.CorrectFromDiscriminators(rulesOut)));
    }

    // The margin at which guessers stay among the counts that rule it out often enough. The chance moves in steps, which halving finds.
    private static double RuledOut(Protocol protocol, int tasters, double power, double beta)
    {
        double low = 0, high = 1;
        for (var i = 0; i < 52; i++)
        {
            var middle = (low + high) / 2;
            if (Planning.Power.OfSimilarity(protocol, tasters, beta, middle) >= power) high = middle;
            else low = middle;
        }

        return high;
    }

    /// <summary>
    /// For example <c>20 tasters (triangle): a difference shows in 80 % of panels if 42 % or more discriminate; if nobody does, 80 % of
    /// panels rule out 43 %.</c>
    /// </summary>
    public override string ToString()
    {
        var detects = Detects is { } share
            ? $"a difference shows in {Printed.ChosenPercent(Power)} of panels or more if {Printed.Percent(share)} or more discriminate"
            : "no count of so few can show a difference";
        return $"{Tasters} tasters ({Protocol.Name}): {detects}; if nobody does, {Printed.ChosenPercent(Power)} of panels or more can "
            + $"rule out {Printed.Percent(RulesOut)} discriminators and no smaller share.";
    }
}
