using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Checks;

/// <summary>A lot in use whose alpha acid was measured more than a year before brewing day.</summary>
internal sealed class OldAssay : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var weighed = facts.Content.Charges.Values.SelectMany(charges => charges).Select(charge => charge.Lot).Distinct().ToList();
        foreach (var lot in weighed.Count > 0 ? weighed : facts.Content.Lots)
        {
            var day = facts.Brewed ?? facts.Today;
            if (lot.AssayDate is not { } assayed || day <= assayed.AddYears(1)) continue;
            var when = facts.Brewed is { } brewed ? $"on brewing day ({TrialFacts.Day(brewed)})" : $"today ({TrialFacts.Day(day)})";
            yield return facts.InRow(
                HopLotReader.FileName, "lot", lot.Name, "assay date",
                $"The assay of lot {lot.Name} is more than a year old {when}; hops lose alpha acid in storage, so the charge is probably "
                    + $"weaker than its figure says.",
                "an assay of the last twelve months",
                "Have the lot assayed again. Where hops.csv tells how it was kept (storage, packaging, loss in six months) or its HSI on "
                    + "brew day, the figure is aged to brewing day.");
        }
    }
}

/// <summary>Halves whose lots are of different harvests.</summary>
internal sealed class CropYearsApart : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var (a, b) = (Lots(facts, Side.A), Lots(facts, Side.B));
        foreach (var lot in b.Except(a))
        {
            if (lot.CropYear is not { } year || a.Count == 0
                || a.Exists(other => other.CropYear is null || other.CropYear == year)) continue;
            var others = string.Join(", ", a.Select(other => $"{other.Name} of {other.CropYear}"));
            yield return facts.InRow(
                HopLotReader.FileName, "lot", lot.Name, "crop year",
                $"Half B is hopped with {lot.Name} of {year} and half A with {others}: the harvest differs besides the variable, and the "
                    + $"test cannot tell the two apart.",
                "lots of one harvest in both halves",
                "Use one harvest, or name the harvest as the variable.");
        }
    }

    private static List<HopLot> Lots(TrialFacts facts, Side side) =>
        [.. facts.Content.Charges[side].Select(charge => charge.Lot).Distinct()];
}

/// <summary>Hop charges that are logged for one half only.</summary>
internal sealed class ChargesOfOneHalf : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var side in new[] { Side.A, Side.B })
        {
            var other = side == Side.A ? Side.B : Side.A;
            if (facts.Content.Charges[side].Count > 0 || facts.Content.Charges[other].Count == 0) continue;
            yield return new Fault(ChargeReader.FileName,
                $"Half {other} has hop charges and half {side} has none, so the doses cannot be compared.")
            {
                Column = "beer",
                Accepted = "a row for each addition of each half, with A or B",
                Suggestion = $"Add what went into half {side}. Where both halves got an addition, it takes two rows.",
                Severity = Severity.Warning,
            };
        }
    }
}

/// <summary>Halves that differ in yeast, or in the day it was pitched. Other differences are the parity check's matter.</summary>
internal sealed class HalvesApart : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        if (facts.Content.BatchLog is not { } log) yield break;
        foreach (var line in log.Parity(facts.Content.Description.Changed).Lines)
        {
            if (line.Verdict != Parity.Confound || !Matters(line.Quantity)) continue;
            yield return facts.InRow(
                Files.LogFormat.BatchLog.FileName, "id", line.Rows[^1], "value",
                $"The halves differ in {line.Quantity}: {line.A} in A, {line.B} in B. This differs besides the variable, and the test "
                    + $"cannot tell the two apart.",
                "the same in both halves",
                $"If this is a slip of the pen, log a correction. If it follows from the variable, name it in "
                    + $"{TrialFolder.DescriptionFile} under \"follows from the variable\". If it is so, the write-up will say it.");
        }
    }

    private static bool Matters(string quantity) =>
        quantity.Contains("yeast", StringComparison.OrdinalIgnoreCase)
        || quantity.Equals("pitching date", StringComparison.OrdinalIgnoreCase);
}
