using SplitBatch.Panel;

namespace SplitBatch.Display;

/// <content>Panels: what was planned and what was counted.</content>
public static partial class Tables
{
    /// <summary>What a panel declared before it was served.</summary>
    /// <param name="plans">The plans.</param>
    public static Table Plans(IEnumerable<PanelPlan> plans) => Table.Of(plans, "What was declared before pouring")
        .Text("panel", p => p.Name)
        .Text("protocol", p => p.Protocol.Name)
        .Number("tasters", p => p.Tasters, decimals: 0)
        .Number("sets each", p => p.Replicates, decimals: 0)
        .Percent("alpha", p => p.Alpha)
        .Percent("margin", p => p.Margin)
        .Percent("beta", p => p.Beta)
        .Number("right that show a difference", p => p.CriticalCount, decimals: 0)
        .Number("right that rule the margin out", p => p.SimilarityCount is >= 0 and var count ? count : null, decimals: 0)
        .ToTable();

    /// <summary>What panels counted and what follows.</summary>
    /// <param name="readings">The panels by name.</param>
    public static Table Panels(IEnumerable<(string Name, PanelReading Reading)> readings) => Table.Of(readings, "What was counted")
        .Text("panel", r => r.Name)
        .Text("protocol", r => r.Reading.Difference.Protocol.Name)
        .Number("answers", r => r.Reading.Difference.Tasters, decimals: 0)
        .Number("right", r => r.Reading.Difference.Count, decimals: 0)
        .Number("needed to show a difference", r => r.Reading.Difference.CriticalCount, decimals: 0)
        .Number("p-value", r => r.Reading.Difference.PValue, decimals: 4)
        .Percent("tell apart", r => r.Reading.Difference.Discriminators)
        .Percent("from", r => r.Reading.Difference.DiscriminatorsInterval.Low)
        .Percent("to", r => r.Reading.Difference.DiscriminatorsInterval.High)
        .Percent("still allowed", r => r.Reading.Similarity.StillAllowed)
        .ToTable();

    /// <summary>What one panel counted and what follows.</summary>
    /// <param name="reading">The panel's reading.</param>
    /// <param name="name">The panel's name.</param>
    public static Table Panel(PanelReading reading, string name = "panel") => Panels([(name, reading)]);
}
