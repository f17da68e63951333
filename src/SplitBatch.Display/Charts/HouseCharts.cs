using System.ComponentModel;
using SplitBatch.Bitterness;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Trials.Reading;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of what this house measures of its estimates.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class HouseCharts
{
    /// <summary>Measured against estimated bitterness of past beers, with the house's factor and how sure it is.</summary>
    /// <param name="calibration">The calibration, of one batch or more.</param>
    /// <exception cref="TrialIncompleteException">There is no batch yet.</exception>
    public static Figure Chart(this HouseCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        if (calibration.Points.IsEmpty)
            throw new TrialIncompleteException("past beer with hop charges and a lab return",
                "log both, here or in a trial beside it, and this chart learns from them", "3-lab-return");
        var most = calibration.Points.Max(p => Math.Max(p.Pair.Estimated, p.Pair.Measured)) * 1.12;
        var range = calibration.FactorInterval;
        At[][] batches = [.. calibration.Points.GroupBy(p => p.Pair.Batch).Select(beers => beers.Select(PlaceOf).ToArray())];
        return new Figure
        {
            Title = Invariant($"This house measures {Printed.Ratio(calibration.Factor)} of its estimates, from ")
                + Invariant($"{Words.Counted(calibration.Batches, "batch", "batches")}"),
            Subtitle = Invariant($"Each point is a beer, the halves of a batch joined; band: where the factor lies ")
                + Invariant($"({Printed.Range(range, Printed.Ratio)}, {Printed.ChosenPercent(range.Level)})"),
            Reading = calibration.Statement,
            X = new Axis("estimated by the formula", "IBU") { Min = 0, Max = most },
            Y = new Axis("measured by the lab", "BU") { Min = 0, Max = most },
            Marks =
            [
                new Ribbon([(0, 0, 0), (most, most * range.Low, Math.Min(most, most * range.High))]) { Ink = Ink.BeerA },
                new Curve([new At(0, 0), new At(most, most)]) { Ink = Ink.Faint, Name = "as estimated" },
                new Curve(
                    [new At(0, 0),
                        new At(calibration.Factor > 1 ? most / calibration.Factor : most,
                            calibration.Factor > 1 ? most : most * calibration.Factor)])
                {
                    Ink = Ink.BeerA,
                    Name = "this house",
                },
                .. batches.Where(beers => beers.Length > 1).Select(beers => new Curve(beers) { Ink = Ink.Faint }),
                new Dots([.. batches.SelectMany(beers => beers)]),
                .. Names(calibration),
            ],
            Numbers = TableOf.Each(calibration.Points, "Past beers")
                .Text("batch", p => p.Pair.Batch)
                .Number("estimated", p => p.Pair.Estimated, "IBU")
                .Number("measured", p => p.Pair.Measured, "BU")
                .Number("measured over estimated", p => p.Pair.Ratio, decimals: 2)
                .Number("said by the other batches", p => p.LeftOut, "IBU")
                .ToTable(),
        };
    }

    private static At PlaceOf(CalibrationPoint point) => new(point.Pair.Estimated, point.Pair.Measured);

    /// <summary>
    /// The batches' names, each once, in turn below the lowest and above the highest of its beers, so that neighbours keep clear; none
    /// where they would crowd.
    /// </summary>
    private static IEnumerable<Note> Names(HouseCalibration calibration)
    {
        var batches = calibration.Points.GroupBy(p => p.Pair.Batch).OrderBy(beers => beers.Average(p => p.Pair.Estimated)).ToList();
        return batches.Count > 6 ? [] : batches.Select((beers, i) => i % 2 == 0
            ? new Note(PlaceOf(beers.MinBy(p => p.Pair.Measured)!), beers.Key) { Ink = Ink.Faint, Below = true }
            : new Note(PlaceOf(beers.MaxBy(p => p.Pair.Measured)!), beers.Key) { Ink = Ink.Faint });
    }
}
