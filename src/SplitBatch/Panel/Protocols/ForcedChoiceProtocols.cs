using SplitBatch.Numbers;

namespace SplitBatch.Panel.Protocols;

/// <summary>The triangle: guess 1/3.</summary>
/// <remarks>Psychometric function of Ura (1960), after Ennis (1993), The power of sensory discrimination methods.</remarks>
internal sealed class TriangleProtocol() : Protocol("triangle", "triangle test", "triangular", "odd one out")
{
    private static readonly double Root3 = Math.Sqrt(3), RootTwoThirds = Math.Sqrt(2.0 / 3);

    public override string Question => "Can tasters tell the two beers apart at all, without being told what to look for?";

    public override string Task => "Taste three cups in the order given. Two are alike. Name the odd one; guess if unsure.";

    public override string Advice =>
        "The usual first choice: nothing about the difference has to be known. It needs more tasters than the tetrad or 3-AFC for the "
            + "same difference.";

    public override int Pours => 3;

    public override double Chance => 1.0 / 3;

    private protected override double Correct(double d) => 2 * Gauss.HalfMean(z =>
        Gauss.Below((-z * Root3) + (d * RootTwoThirds)) + Gauss.Below((-z * Root3) - (d * RootTwoThirds)));

    private protected override double Rise(double d) => 2 * RootTwoThirds * Gauss.HalfMean(z =>
        Gauss.Density((-z * Root3) + (d * RootTwoThirds)) - Gauss.Density((-z * Root3) - (d * RootTwoThirds)));
}

/// <summary>The duo-trio: guess 1/2.</summary>
/// <remarks>Psychometric function of David and Trivedi (1962), after Ennis (1993).</remarks>
internal sealed class DuoTrioProtocol(bool constant) : Protocol(
    constant ? "duo-trio constant reference" : "duo-trio",
    constant ? ["duo-trio constant", "constant reference duo-trio"]
        : ["duo-trio balanced", "duo-trio balanced reference", "balanced reference duo-trio"])
{
    private static readonly double Root2 = Math.Sqrt(2), Root6 = Math.Sqrt(6);

    public override string Question => "Can tasters tell the two beers apart, when one is given as a reference?";

    public override string Task =>
        "Taste the reference, then the two coded cups. Name the one that matches the reference; guess if unsure.";

    public override string Advice => constant
        ? "For tasters who know one of the beers well: it is always the reference. As a pure test of difference it is the weakest of all."
        : "Easy to explain, but a guess is right half of the time, so it needs the most tasters. Neither beer has to be known.";

    public override int Pours => 3;

    public override double Chance => 0.5;

    private protected override double Correct(double d)
    {
        double a = Gauss.Below(d / Root2), b = Gauss.Below(d / Root6);
        return 1 - a - b + (2 * a * b);
    }

    private protected override double Rise(double d)
    {
        double a = Gauss.Below(d / Root2), b = Gauss.Below(d / Root6);
        return (Gauss.Density(d / Root2) / Root2 * ((2 * b) - 1)) + (Gauss.Density(d / Root6) / Root6 * ((2 * a) - 1));
    }
}

/// <summary>The tetrad without a named property: guess 1/3.</summary>
/// <remarks>Psychometric function after Ennis, Ennis, Palen and Lampe (1998), and O'Mahony, Masuoka and Ishii (1994).</remarks>
internal sealed class TetradProtocol() : Protocol("tetrad", "tetrads", "unspecified tetrad")
{
    public override string Question => "Can tasters tell the two beers apart at all, without being told what to look for?";

    public override string Task =>
        "Taste four cups in the order given. There are two of each beer. Sort them into two pairs; guess if unsure.";

    public override string Advice =>
        "For the same difference it needs about a third of a triangle's tasters, but a fourth cup: with bitter or strong beer the tiring "
            + "may eat the gain.";

    public override int Pours => 4;

    public override double Chance => 1.0 / 3;

    private protected override double Correct(double d) => 1 - (2 * Gauss.Mean(z =>
    {
        var low = Gauss.Below(z - d);
        return (2 * Gauss.Below(z) * low) - (low * low);
    }));

    private protected override double Rise(double d) => 4 * Gauss.Mean(z =>
        Gauss.Density(z - d) * (Gauss.Below(z) - Gauss.Below(z - d)));
}

/// <summary>The paired comparison: guess 1/2.</summary>
internal sealed class PairedProtocol(int sides) : Protocol(
    sides == 1 ? "paired directional" : "paired two-sided",
    sides == 1 ? ["2-AFC", "paired one-sided", "directional paired comparison"]
        : ["paired preference", "paired comparison", "two-sided paired comparison"])
{
    private static readonly double Root2 = Math.Sqrt(2);

    public override string Question => sides == 1
        ? "Has the one beer more of a named property than the other, in the direction expected beforehand?"
        : "Which of the two beers has more of a named property, or is preferred, either way round?";

    public override string Task =>
        "Taste the two cups in the order given. Name the one with more of the property asked for; choose even if unsure.";

    public override string Advice => sides == 1
        ? "The fewest tasters and cups, if the property is known (bitterness, say) and only one direction is of interest. It cannot see "
            + "any other difference."
        : "For a named property or for preference, when either answer would be news. It cannot see any other difference.";

    public override int Pours => 2;

    public override int Sides => sides;

    public override bool NamesTheProperty => true;

    public override double Chance => 0.5;

    private protected override double Correct(double d) => Gauss.Below(d / Root2);

    private protected override double Rise(double d) => Gauss.Density(d / Root2) / Root2;
}

/// <summary>Three-alternative forced choice: guess 1/3.</summary>
/// <remarks>Psychometric function after Green and Birdsall (1964), in Ennis (1993).</remarks>
internal sealed class ThreeAfcProtocol() : Protocol("3-AFC", "three-afc", "three-alternative forced choice", "3-alternative forced choice")
{
    public override string Question => "Has the one beer more of a named property than the other, in the direction expected beforehand?";

    public override string Task =>
        "Taste three cups in the order given. Name the one with most of the property asked for; guess if unsure.";

    public override string Advice =>
        "As the triangle, but the property is named, which makes the task far easier: a third of the tasters or fewer. It cannot see any "
            + "other difference.";

    public override int Pours => 3;

    public override bool NamesTheProperty => true;

    public override double Chance => 1.0 / 3;

    private protected override double Correct(double d) => Gauss.Mean(z =>
    {
        var below = Gauss.Below(z + d);
        return below * below;
    });

    private protected override double Rise(double d) => 2 * Gauss.Mean(z => Gauss.Below(z + d) * Gauss.Density(z + d));
}
