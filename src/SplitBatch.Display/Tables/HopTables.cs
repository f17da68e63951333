using System.ComponentModel;
using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of hop lots and charges.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class HopTables
{
    /// <summary>A hop lot and its assay.</summary>
    /// <param name="lot">The lot.</param>
    public static Table Table(this HopLot lot) => Table([lot]);

    /// <summary>The hop lots and their assays.</summary>
    /// <param name="lots">The lots.</param>
    public static Table Table(this IEnumerable<HopLot> lots) => TableOf.Each(lots, "Hop lots")
        .Text("lot", lot => lot.Name)
        .Text("form", lot => lot.Form.InWords())
        .Number("alpha acid", lot => lot.Alpha.Percent, "%")
        .Number("± of alpha", lot => lot.AlphaUncertainty.HalfWidth95(lot.Alpha.Percent), "%", decimals: 2)
        .Number("beta acid", lot => lot.BetaPercent, "%")
        .Number("± of beta", BetaRange, "%", decimals: 2)
        .Number("crop year", lot => lot.CropYear, decimals: 0)
        .Text("assayed", lot => Day(lot.AssayDate))
        .Note("± is the 95 % range of the assay. " + BetaNote)
        .ToTable();

    /// <summary>What the lots held when assayed and what is left on brew day, by the best published model that the data allow.</summary>
    /// <param name="lots">The lots as <c>trial.LotsOnBrewDay</c> has them.</param>
    public static Table Table(this IEnumerable<StorageLoss> lots)
    {
        StorageLoss[] all = [.. lots];
        var day = Day(all.FirstOrDefault(loss => loss.Day is not null)?.Day);
        return TableOf.Each(all, $"Hop lots, as assayed and on brew day{(day is null ? "" : $" ({day})")}")
            .Text("lot", loss => loss.Lot.Name)
            .Text("form", loss => loss.Lot.Form.InWords())
            .Number("crop year", loss => loss.Lot.CropYear, decimals: 0)
            .Text("assayed", loss => Day(loss.Lot.AssayDate))
            .Text("alpha acid [%]",
                loss => $"{Printed.HopAcid(loss.Lot.Alpha.Percent).Bare} ± "
                    + $"{Printed.HopAcid(loss.Lot.AlphaUncertainty.HalfWidth95(loss.Lot.Alpha.Percent)).Bare}")
            .Text("beta acid [%]",
                loss => loss.Lot.BetaPercent is { } beta
                    ? $"{Printed.HopAcid(beta).Bare} ± {Printed.HopAcid(BetaRange(loss.Lot)!.Value).Bare}"
                    : null)
            .Text("alpha acid on brew day [%]",
                loss => $"{Printed.HopAcid(loss.Alpha.Percent).Bare} ({Printed.HopAcid(loss.PercentInterval.Low).Bare} to "
                    + $"{Printed.HopAcid(loss.PercentInterval.High).Bare})")
            .Text("aged by", loss => loss.IsAged ? loss.Model : "nothing: as assayed")
            .Note(string.Join(" ", [.. all.SelectMany(loss => loss.Notes),
                "± is the 95 % range of the assay; the range on brew day adds what storage leaves open.", BetaNote]))
            .ToTable();
    }

    /// <summary>What to weigh for either half and what each charge gives.</summary>
    /// <param name="match">The two matched halves.</param>
    public static Table Table(this ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        var measure = Measure.Of(match);
        var rows = new[] { match.A, match.B }.SelectMany(side => side.Estimate.Charges.Select(charge => (side.Side, charge)));
        return TableOf.Each(rows, $"What to weigh, by {match.A.Estimate.Model.Name}'s formula")
            .Text("beer", r => r.Side.ToString())
            .Text("lot", r => r.charge.Charge.Lot.Name)
            .Text("form", r => r.charge.Charge.Lot.Form.InWords())
            .Text("added", r => r.charge.Charge.When)
            .Number("amount", r => measure.Of(r.charge.Charge.Mass), measure.Mass, measure.Decimals)
            .Number("alpha acid", r => measure.Of(r.charge.Charge.AlphaMass), measure.Mass, measure.Decimals + 1)
            .Percent("used", r => r.charge.Utilisation, decimals: 1)
            .Number("bitterness", r => r.charge.Bitterness.Value, "IBU")
            .ToTable();
    }

    /// <summary>What else comes with an equal bitterness: hop mass, plant matter, wort kept back, cost.</summary>
    /// <param name="match">The two matched halves.</param>
    public static Table WhatComesWithIt(this ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        var measure = Measure.Of(match);
        var table = TableOf.Each([match.A, match.B], "What comes with the bitterness")
            .Text("beer", side => side.Side.ToString())
            .Number("bitterness", side => side.Bitterness.Value, "IBU")
            .Number("hops", side => measure.Of(side.HopMass), measure.Mass, measure.Decimals)
            .Number("alpha acid", side => measure.Of(side.AlphaMass), measure.Mass, measure.Decimals + 1)
            .Number("plant matter", side => measure.Of(side.PlantMatter), measure.Mass, measure.Decimals)
            .Number("wort kept back", side => measure.KeptBackOf(side.WortHeld), measure.KeptBack, decimals: 2)
            .Number("into the fermenter", side => measure.WortOf(side.IntoFermenter), measure.Wort);
        return (match.ExtraCost is null ? table : table.Number("cost", side => (double?)side.Cost, decimals: 2)).ToTable();
    }

    private const string BetaNote =
        "Beta acids enter no estimate of bitterness: what they turn into in old hops is bitter, and is not in the published formulas.";

    private static double? BetaRange(HopLot lot) => lot.BetaPercent is { } beta ? lot.BetaUncertainty.HalfWidth95(beta) : null;

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
