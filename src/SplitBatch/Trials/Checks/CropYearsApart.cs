using SplitBatch.Brewing;

namespace SplitBatch.Trials.Checks;

/// <summary>Halves whose lots are of different harvests.</summary>
internal sealed class CropYearsApart : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var (a, b) = (Lots(facts, Side.A), Lots(facts, Side.B));
        foreach (var lot in b.Except(a))
        {
            if (lot.CropYear is not { } year || a.Count == 0 || a.Exists(other => other.CropYear is null || other.CropYear == year)) continue;
            var others = string.Join(", ", a.Select(other => $"{other.Name} of {other.CropYear}"));
            yield return facts.InRow(
                HopLotReader.FileName, "lot", lot.Name, "crop year",
                $"Half B is hopped with {lot.Name} of {year} and half A with {others}: the harvest differs besides the variable, and the test cannot tell the two apart.",
                "lots of one harvest in both halves",
                "Use one harvest, or name the harvest as the variable.");
        }
    }

    private static List<HopLot> Lots(TrialFacts facts, Side side) => [.. facts.Content.Charges[side].Select(charge => charge.Lot).Distinct()];
}
