using System.ComponentModel;
using SplitBatch.Bitterness;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of what goes into two doses.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class ChargeCharts
{
    /// <summary>The hops of both halves, beside the bitterness they are meant to give.</summary>
    /// <param name="match">The two doses.</param>
    public static Figure Chart(this ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        var (a, b, measure) = (match.A, match.B, Measure.Of(match));
        var ratio = Math.Max(match.HopMassRatio, 1 / match.HopMassRatio);
        var more = a.HopMass >= b.HopMass ? "A" : "B";
        return new Figure
        {
            Title = ratio < 1.05
                ? "Both halves get about the same weight of hops"
                : Invariant($"Half {more} takes {Printed.Times(ratio)} times the hops for the same estimated bitterness"),
            Subtitle = Invariant($"Hops for each half; by {a.Estimate.Model.Name}'s formula {Printed.Bitterness(a.Bitterness.Value)} and ")
                + Invariant($"{Printed.Bitterness(b.Bitterness.Value)} IBU"),
            Reading = $"A: {Carried(a, measure)}. B: {Carried(b, measure)}.",
            X = new Axis("hops", measure.Mass) { Min = 0 },
            Y = Axis.Of([$"half A: {Lots(a)}", $"half B: {Lots(b)}"]),
            Marks =
            [
                new Bars([new BarItem(0, measure.Of(a.HopMass), measure.Text(a.HopMass))], Along.X) { Ink = Ink.BeerA },
                new Bars([new BarItem(1, measure.Of(b.HopMass), measure.Text(b.HopMass))], Along.X) { Ink = Ink.BeerB },
            ],
            Numbers = match.WhatComesWithIt(),
        };
    }

    private static string Lots(SideDose side) => Words.Listed([.. side.Charges.Select(c => c.Lot.Name).Distinct()]);

    private static string Carried(SideDose side, Measure measure) =>
        $"{measure.Text(side.HopMass)} of {Lots(side)} with {measure.Text(side.AlphaMass, more: 1)} of alpha acid and "
            + $"{measure.Text(side.PlantMatter)} of plant matter";
}
