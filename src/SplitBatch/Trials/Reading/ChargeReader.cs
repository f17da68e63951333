using SplitBatch.Brewing;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Reading;

/// <summary>Reads charges.csv: one row for each weighed addition of each half.</summary>
internal static class ChargeReader
{
    public const string FileName = "charges.csv";

    /// <summary>The columns that are read.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["beer", "lot", "amount", "stage", "time"];

    private static readonly Dictionary<string, AdditionStage> Stages = PlainWords.Dictionary<AdditionStage>(stage => stage.InWords());

    /// <summary>The charges that could be read, by half; none when there is no file yet.</summary>
    /// <param name="table">The file.</param>
    /// <param name="lots">The lots that could be read.</param>
    /// <param name="names">The names of all lots; one that could not be read has its own fault, and needs no second one here.</param>
    /// <param name="kettle">The kettle that the charges go into; null while it is not known.</param>
    public static IReadOnlyDictionary<Side, IReadOnlyList<HopCharge>> Read(CsvTable? table, IReadOnlyList<HopLot> lots,
        IReadOnlyList<string> names, Kettle? kettle)
    {
        var charges = new Dictionary<Side, List<HopCharge>> { [Side.A] = [], [Side.B] = [] };
        if (table is not null && table.Require("beer", "lot", "amount", "stage", "time"))
        {
            foreach (var row in table.Rows)
            {
                var side = row.Beer();
                var charge = ReadCharge(row, lots, names, kettle);
                if (side is { } beer && charge is not null) charges[beer].Add(charge);
            }
        }

        return charges.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<HopCharge>)pair.Value);
    }

    private static HopCharge? ReadCharge(CsvRow row, IReadOnlyList<HopLot> lots, IReadOnlyList<string> names, Kettle? kettle)
    {
        var lot = row.Text("lot") is { } name ? FindLot(row, name, lots, names) : null;
        var amount = row.Mass("amount");
        var stage = row.OneOf("stage", Stages);
        var time = stage == AdditionStage.Fermenter && row.Optional("time") is null ? Duration.Zero : row.Duration("time");
        if (lot is null || amount is null || stage is null || time is null) return null;
        var charge = row.Make("amount", () => Checked(new HopCharge(lot, amount.Value, stage.Value, time.Value), ChargeChecks.CheckRate));
        return charge is null ? null : row.Make("time", () => Checked(charge, ChargeChecks.CheckTime));

        HopCharge Checked(HopCharge one, Action<Kettle, HopCharge> check)
        {
            if (kettle is not null) check(kettle, one);
            return one;
        }
    }

    private static HopLot? FindLot(CsvRow row, string name, IReadOnlyList<HopLot> lots, IReadOnlyList<string> names)
    {
        var lot = lots.FirstOrDefault(known => string.Equals(known.Name, name, StringComparison.OrdinalIgnoreCase));
        if (lot is null && !names.Contains(name, StringComparer.OrdinalIgnoreCase))
        {
            var accepted = names.Count == 0 ? $"a lot that stands in {HopLotReader.FileName}" : string.Join(", ", names);
            row.Refuse("lot", $"No lot of this name stands in {HopLotReader.FileName}.", accepted, Nearest.Suggestion(name, names));
        }

        return lot;
    }
}
