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
                $"The assay of lot {lot.Name} is more than a year old {when}; hops lose alpha acid in storage, so the charge is probably weaker than its figure says.",
                "an assay of the last twelve months",
                "Have the lot assayed again. Where hops.csv tells how it was kept (storage, packaging, loss in six months) or its HSI on brew day, the figure is aged to brewing day.");
        }
    }
}
