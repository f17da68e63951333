using SplitBatch.Panel.Protocols;
using UnitsNet;

namespace SplitBatch.Panel.Planning;

/// <summary>
/// Which protocol? One row of the table that sets the protocols against one another for the same difference between the beers.
/// </summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="DPrime">The difference, in units of the noise of one tasting.</param>
/// <param name="CorrectShare">The share of right answers at that difference.</param>
/// <param name="Discriminators">The share of discriminators at that difference; null where there is no known guessing chance.</param>
/// <param name="First">The first number of sets that reaches the power, one for each taster.</param>
/// <param name="Always">The number of sets from which the power is always reached; null for A/not-A and same/different, which are
/// searched only for the first.</param>
/// <param name="Cups">Cups poured in all, for <see cref="Always"/> sets (or <see cref="First"/>).</param>
/// <param name="Beer">Beer poured in all, both beers together, without spare.</param>
public sealed record ProtocolRow(
    Protocol Protocol, double DPrime, double CorrectShare, double? Discriminators, int First, int? Always, int Cups, Volume Beer)
{
    /// <summary>For example <c>tetrad: 24 tasters, 96 cups, 4.8 l; can tasters tell ...</c></summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Protocol.Name}: {Always ?? First} tasters, {Cups} cups, {Printed.Volume(Beer)}. {Protocol.Question}");
}

/// <summary>Sets the protocols against one another: which question each answers, tasters, cups and beer for the same d-prime.</summary>
public static class ProtocolComparison
{
    /// <summary>One row for each protocol, in the order of <see cref="Protocol.All"/>.</summary>
    /// <param name="dPrime">The difference to be found, in units of the noise of one tasting, from 0.2 up to 5; about 1 is a small
    /// difference.</param>
    /// <param name="pour">Beer in one cup.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="power">The chance wanted of showing it, above 0 and below 1.</param>
    /// <remarks>
    /// A/not-A and same/different by Fisher's exact test with as many sets of either kind, for tasters who draw the line where most
    /// answers are right.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static IReadOnlyList<ProtocolRow> At(double dPrime, Volume pour, double alpha = 0.05, double power = 0.80)
    {
        Guard.InRange(dPrime, 0.2, 5);
        Guard.Positive(pour.Milliliters);
        return [.. Protocol.All.Select(protocol => Row(protocol, dPrime, pour, alpha, power))];
    }

    private static ProtocolRow Row(Protocol protocol, double dPrime, Volume pour, double alpha, double power)
    {
        var correct = protocol.CorrectShare(dPrime);
        if (!protocol.HasKnownChance)
        {
            var sets = YesNoPower.SetsNeeded(protocol, alpha, power, dPrime);
            return new(protocol, dPrime, correct, null, sets, null, sets * protocol.Pours, pour * (sets * protocol.Pours));
        }

        var needed = Power.TastersNeededForDPrime(protocol, alpha, power, dPrime);
        var cups = needed.Always * protocol.Pours;
        return new(protocol, dPrime, correct, protocol.Discriminators(correct), needed.First, needed.Always, cups, pour * cups);
    }
}
