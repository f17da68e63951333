using SplitBatch.Brewing;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>Reads hops.csv: one row for each lot.</summary>
internal static class HopLotReader
{
    public const string FileName = "hops.csv";

    /// <summary>The columns that are read.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "lot", "form", "alpha", "alpha uncertainty", "beta", "beta uncertainty", "crop year", "assay date", "storage", "packaging", "HSI",
        "HSI on brew day",
        "loss in six months", "price per kg",
    ];

    private static readonly Dictionary<string, HopForm> Forms = PlainWords.Dictionary<HopForm>(form => form.InWords());

    private static readonly Dictionary<string, Packaging> Packagings = PlainWords.Dictionary<Packaging>(packaging => packaging.InWords());

    /// <summary>The lots that could be read.</summary>
    public static IReadOnlyList<HopLot> Read(CsvTable table)
    {
        if (!table.Require("lot", "form", "alpha")) return [];
        var lots = new List<HopLot>();
        foreach (var row in table.Rows)
        {
            if (ReadLot(row) is not { } lot) continue;
            if (lots.Exists(known => string.Equals(known.Name, lot.Name, StringComparison.OrdinalIgnoreCase)))
            {
                row.Refuse("lot", "A lot of this name stands in an earlier row.", "each lot once");
                continue;
            }

            lots.Add(lot);
        }

        return lots;
    }

    private static HopLot? ReadLot(CsvRow row)
    {
        var name = row.Text("lot");
        var form = row.OneOf("form", Forms);
        var percent = row.Number("alpha", 0, 90);
        var alpha = percent is { } value ? row.Make<AlphaAcid?>("alpha", () => AlphaAcid.FromPercent(value)) : null;
        var uncertainty = row.OptionalNumber("alpha uncertainty", 0, 10);
        var beta = row.OptionalNumber("beta", 0, 60);
        var betaUncertainty = row.OptionalNumber("beta uncertainty", 0, 10);
        var year = row.OptionalWhole("crop year", 1950, 2100);
        var assayed = row.OptionalDate("assay date");
        var storage = row.Optional("storage") is null ? null : row.Temperature("storage");
        Packaging? packaging = row.Optional("packaging") is null ? null : row.OneOf("packaging", Packagings);
        var indexAtAssay = row.OptionalNumber("HSI", 0.2, 2);
        var index = row.OptionalNumber("HSI on brew day", 0.2, 2);
        var sixMonths = row.OptionalNumber("loss in six months", 0, 95);
        var price = row.OptionalNumber("price per kg", 0, 1e6);
        if (name is null || form is null || alpha is null) return null;
        var lot = row.Make("lot", () => new HopLot(name, form.Value, alpha.Value)
        {
            AlphaUncertainty = uncertainty is { } points ? AssayUncertainty.Limit95(points) : AssayUncertainty.Packet,
            BetaPercent = beta,
            BetaUncertainty = betaUncertainty is { } betaPoints ? AssayUncertainty.Limit95(betaPoints) : AssayUncertainty.Packet,
            CropYear = year,
            AssayDate = assayed,
            Storage = storage,
            Packaging = packaging,
            StorageIndex = index,
            StorageIndexAtAssay = indexAtAssay,
            LossInSixMonths = sixMonths / 100,
            PricePerKilogram = price is { } cost ? (decimal)cost : null,
        });
        if (lot?.StorageIndex is not null) row.Make("HSI on brew day", () => NickersonLikens.Loss(lot));
        return lot;
    }
}
