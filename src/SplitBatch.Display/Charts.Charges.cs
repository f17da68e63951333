using SplitBatch.Bitterness;
using SplitBatch.Display.Figures;

namespace SplitBatch.Display;

/// <content>What is weighed for either half.</content>
public static partial class Charts
{
    /// <summary>The hops of both halves, beside the bitterness they are meant to give.</summary>
    /// <param name="match">The two doses.</param>
    public static Figure Charges(ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        var (a, b) = (match.A, match.B);
        var ratio = Math.Max(match.HopMassRatio, 1 / match.HopMassRatio);
        var more = a.HopMass >= b.HopMass ? "A" : "B";
        return new Figure
        {
            Title = ratio < 1.05
                ? "Both halves get about as much of their hops"
                : Invariant($"Half {more} takes {ratio:0.0} times the hops for the same estimated bitterness"),
            Subtitle = Invariant($"Hops weighed for either half; by {a.Estimate.Model.Name}'s formula {a.Bitterness.Value:0.0} and {b.Bitterness.Value:0.0} IBU"),
            Reading = $"A: {Carried(a)}. B: {Carried(b)}.",
            X = new Axis("hops", "g") { Min = 0 },
            Y = Axis.Of([$"half A: {Lots(a)}", $"half B: {Lots(b)}"]),
            Marks =
            [
                new Bars([new BarItem(0, a.HopMass.Grams, Invariant($"{a.HopMass.Grams:0.0} g"))], Along.X) { Ink = Ink.BeerA },
                new Bars([new BarItem(1, b.HopMass.Grams, Invariant($"{b.HopMass.Grams:0.0} g"))], Along.X) { Ink = Ink.BeerB },
            ],
            Numbers = Tables.WhatComesWithIt(match),
        };
    }

    private static string Lots(SideDose side) => Listed([.. side.Charges.Select(c => c.Lot.Name).Distinct()]);

    private static string Carried(SideDose side) => Invariant(
        $"{side.HopMass.Grams:0.0} g of {Lots(side)} with {side.AlphaMass.Grams:0.00} g of alpha acid and {side.PlantMatter.Grams:0.0} g of plant matter");
}
