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
/// <param name="Detects">The smallest share of discriminators that is shown with the power wanted; null where even a panel of discriminators would not show it.</param>
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
        var critical = Panel.Planning.Power.CriticalCount(protocol, tasters, alpha);
        double? detects = critical is null ? null
            : Panel.Planning.Power.Of(protocol, tasters, alpha, 0) >= power ? 0
            : Root.Of(s => Panel.Planning.Power.Of(protocol, tasters, alpha, s) - power, 0, 1);
        // The count that guessers stay at or below often enough; its upper limit is the margin.
        var guessers = Enumerable.Range(0, tasters + 1).First(x => ChanceOfStaying(x) >= power);
        var rulesOut = protocol.Discriminators(ShareIntervals.UpperLimit(guessers, tasters, beta));
        return new(
            protocol, tasters, alpha, beta, power, critical, detects,
            detects is { } share ? protocol.DPrime(protocol.CorrectFromDiscriminators(share)) : null,
            rulesOut, protocol.DPrime(protocol.CorrectFromDiscriminators(rulesOut)));

        double ChanceOfStaying(int x) => protocol.Sides == 1
            ? ExactBinomial.AtMost(x, tasters, protocol.Chance)
            : ExactBinomial.AtMost(x, tasters, protocol.Chance) - ExactBinomial.AtMost(tasters - x - 1, tasters, protocol.Chance);
    }

    /// <summary>For example <c>20 tasters (triangle): a difference shows in 80 % of panels if 42 % or more discriminate; if nobody does, 80 % of panels rule out 43 %.</c></summary>
    public override string ToString()
    {
        var detects = Detects is { } share
            ? $"a difference shows in {Counts.Percent(Power)} of panels or more if {Counts.Percent(share)} or more discriminate"
            : "no count of so few can show a difference";
        return $"{Tasters} tasters ({Protocol.Name}): {detects}; if nobody does, {Counts.Percent(Power)} of panels or more can rule out {Counts.Percent(RulesOut)} discriminators and no smaller share.";
    }
}
