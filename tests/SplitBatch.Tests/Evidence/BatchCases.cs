using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>The halves as brewed: batch logs, hop lots and doses in every state.</summary>
internal static class BatchCases
{
    public static IEnumerable<(string State, TrialEvidence Evidence)> All()
    {
        var trial = SamplePanel.Trial();
        yield return ("no log", trial);
        yield return ("all alike", trial with { Parity = Log(), HeldEqual = ["yeast lot and pH"] });
        yield return ("nothing measured", trial with { Parity = new BatchLog([]).Parity() });
        yield return ("one quantity not measured", trial with { Parity = Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05)) });
        yield return ("beyond the instruments", trial with
        {
            Parity = Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05), BatchEntry.Measured("2", Side.B, "pH", 4.6, "pH", 0.05),
                BatchEntry.Measured("3", Side.A, "fermentation temperature", 18, "°C", 0.3),
                BatchEntry.Measured("4", Side.B, "fermentation temperature", 18.2, "°C", 0.3)),
            HeldEqual = ["pH and yeast lot", "fermentation temperature"],
        });
        yield return ("uncertainty not logged",
            trial with
            {
                Parity = Log(BatchEntry.Measured("1", Side.A, "colour", 20, "EBC"),
                    BatchEntry.Measured("2", Side.B, "colour", 20.04, "EBC")),
            });
        yield return ("other words", trial with
        {
            Parity = Log(BatchEntry.Noted("1", Side.A, "packaging date", "2026-01-26"),
                BatchEntry.Noted("2", Side.B, "packaging date", "2026-01-28")),
            HeldEqual = ["packaging day and carbonation"],
        });
        yield return ("gravities apart",
            trial with
            {
                Parity = Log(BatchEntry.Measured("1", Side.A, BatchLog.FinalGravity, 1.010, "SG", 0.001),
                    BatchEntry.Measured("2", Side.B, BatchLog.FinalGravity, 1.014, "SG", 0.001)),
            });
        yield return ("hop lots", trial with
        {
            Parity = Log(),
            HopConfounds = [new(HopDifference.CropYear, "2024", "2025", "Crops differ in oils."),
                new(HopDifference.Storage, "4 °C", "not stated", "Warmer hops age faster.")],
        });
        foreach (var units in new[] { UnitSystem.Metric, UnitSystem.Us })
        {
            yield return ($"doses, {units}",
                trial with
                {
                    Parity = Log(),
                    Units = units,
                    Doses = Bitterness.ChargeMatch
                        .Solve(Kettle.Metric(20, 1.050), 32, HopLot.Cones("cones", 5), HopLot.Pellets("pellets", 11)),
                });
        }
    }

    /// <summary>A log in which every expected quantity was the same in both halves, and what is added.</summary>
    public static ParityCheck Log(params BatchEntry[] more)
    {
        IEnumerable<BatchEntry> same = ParityCheck.Expected.Where(quantity => !more.Any(entry => entry.Quantity == quantity))
            .Select((quantity, i) => quantity switch
            {
                BatchLog.OriginalGravity => BatchEntry.Measured($"s{i}", null, quantity, 1.050, "SG", 0.001),
                BatchLog.FinalGravity => BatchEntry.Measured($"s{i}", null, quantity, 1.010, "SG", 0.001),
                "volume into fermenter" => BatchEntry.Measured($"s{i}", null, quantity, 20, "L", 0.2),
                "pitching temperature" or "fermentation temperature" => BatchEntry.Measured($"s{i}", null, quantity, 18, "°C", 0.3),
                "pH" => BatchEntry.Measured($"s{i}", null, quantity, 4.4, "pH", 0.05),
                "colour" => BatchEntry.Measured($"s{i}", null, quantity, 20, "EBC", 1),
                "carbonation" => BatchEntry.Measured($"s{i}", null, quantity, 2.4, "vol", 0.1),
                _ => BatchEntry.Noted($"s{i}", null, quantity, "alike"),
            });
        return new BatchLog([.. same, .. more]).Parity();
    }
}
