using SplitBatch.Numbers;

namespace SplitBatch.Panel.Protocols;

/// <summary>A/not-A: no known guessing chance.</summary>
internal sealed class ANotAProtocol() : Protocol("A-not-A", "A/not-A", "a or not a", "yes-no"), IYesNo
{
    public override string Question => "Do tasters who have learnt one beer recognise it, and notice when it is replaced by the other?";

    public override string Task => "Taste the known beer A and learn it. Then say of the coded cup: is it A, or not A?";

    public override string Advice =>
        "For beers that cannot be tasted side by side, or that linger. It needs tasters who know A, and both kinds of cup served in known "
            + "numbers.";

    public override int Pours => 1;

    public override bool HasKnownChance => false;

    public (double Hits, double FalseAlarms) BestRates(double dPrime) => (Gauss.Below(dPrime / 2), Gauss.Below(-dPrime / 2));

    private protected override double Correct(double d) => Gauss.Below(d / 2);

    private protected override double Rise(double d) => Gauss.Density(d / 2) / 2;
}

/// <summary>Same/different: no known guessing chance.</summary>
/// <remarks>
/// Differencing strategy, Macmillan, Kaplan and Creelman (1977): "different" is said when the cups lie further apart than tau.
/// </remarks>
internal sealed class SameDifferentProtocol() : Protocol("same-different", "same/different", "same or different"), IYesNo
{
    private static readonly double Root2 = Math.Sqrt(2);

    public override string Question =>
        "Do tasters call two different beers different more often than they call two pours of one beer different?";

    public override string Task => "Taste the two cups in the order given. Say whether they are the same or different.";

    public override string Advice =>
        "Easy to understand, two cups only, but half of the sets must hold the same beer twice, and cautious tasters say same: expect to "
            + "need many tasters.";

    public override int Pours => 2;

    public override bool HasKnownChance => false;

    public (double Hits, double FalseAlarms) BestRates(double dPrime)
    {
        var tau = BestTau(dPrime);
        return (Different(tau, dPrime), 1 - Same(tau));
    }

    private protected override double Correct(double d)
    {
        var tau = BestTau(d);
        return (Same(tau) + Different(tau, d)) / 2;
    }

    // At the best tau the derivative by tau vanishes, so only the direct one is left.
    private protected override double Rise(double d)
    {
        var tau = BestTau(d);
        return (Gauss.Density((d - tau) / Root2) - Gauss.Density((d + tau) / Root2)) / Root2 / 2;
    }

    private static double Same(double tau) => (2 * Gauss.Below(tau / Root2)) - 1;

    private static double Different(double tau, double d) => Gauss.Below((d - tau) / Root2) + Gauss.Below((-d - tau) / Root2);

    // Equal likelihood of the two kinds of pair: cosh(d tau / 2) = exp(d^2 / 4).
    private static double BestTau(double d)
    {
        if (d < 1e-6) return Root2;
        var a = d * d / 4;
        return 2 / d * (a + Math.Log(1 + Math.Sqrt(1 - Math.Exp(-2 * a))));
    }
}

/// <summary>A protocol answered by one of two words, with rates that depend on where the taster draws the line.</summary>
internal interface IYesNo
{
    /// <summary>Hit and false-alarm rates of a taster who draws the line where most answers are right.</summary>
    (double Hits, double FalseAlarms) BestRates(double dPrime);
}
