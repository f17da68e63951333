using SplitBatch.Bitterness;
using SplitBatch.Brewing;

namespace SplitBatch.Display;

/// <content>Hop lots, charges and what they carry.</content>
public static partial class Tables
{
    /// <summary>The hop lots and their assays.</summary>
    /// <param name="lots">The lots.</param>
    public static Table Lots(IEnumerable<HopLot> lots) => Table.Of(lots, "Hop lots")
        .Text("lot", lot => lot.Name)
        .Text("form", lot => Words(lot.Form))
        .Number("alpha acid", lot => lot.Alpha.Fraction * 100, "%")
        .Number("crop year", lot => lot.CropYear, decimals: 0)
        .Text("assayed", lot => lot.AssayDate?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))
        .ToTable();

    /// <summary>What to weigh for either half and what each charge gives.</summary>
    /// <param name="match">The two matched halves.</param>
    public static Table Charges(ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        var rows = new[] { match.A, match.B }.SelectMany(side => side.Estimate.Charges.Select(charge => (side.Side, charge)));
        return Table.Of(rows, $"What to weigh, by {match.A.Estimate.Model.Name}'s formula")
            .Text("beer", r => r.Side.ToString())
            .Text("lot", r => r.charge.Charge.Lot.Name)
            .Text("form", r => Words(r.charge.Charge.Lot.Form))
            .Number("amount", r => r.charge.Charge.Mass.Grams, "g")
            .Number("alpha acid", r => r.charge.Charge.AlphaMass.Grams, "g", decimals: 2)
            .Percent("used", r => r.charge.Utilisation, decimals: 1)
            .Number("bitterness", r => r.charge.Bitterness.Value, "IBU")
            .ToTable();
    }

    /// <summary>What else comes with an equal bitterness: hop mass, plant matter, wort kept back, cost.</summary>
    /// <param name="match">The two matched halves.</param>
    public static Table WhatComesWithIt(ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        return Table.Of([match.A, match.B], "What comes with the bitterness")
            .Text("beer", side => side.Side.ToString())
            .Number("bitterness", side => side.Bitterness.Value, "IBU")
            .Number("hops", side => side.HopMass.Grams, "g")
            .Number("alpha acid", side => side.AlphaMass.Grams, "g", decimals: 2)
            .Number("plant matter", side => side.PlantMatter.Grams, "g")
            .Number("wort kept back", side => side.WortHeld.Liters, "L", decimals: 2)
            .Number("into the fermenter", side => side.IntoFermenter.Liters, "L")
            .ToTable();
    }

    private static string Words(HopForm form)
    {
        var name = form.ToString();
        return string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
    }
}
