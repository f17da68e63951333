using SplitBatch.Panel;

namespace SplitBatch.Evidence.Findings;

/// <summary>Several panels read together by the method that trial.json names.</summary>
public sealed record PanelsCombined : Finding
{
    internal PanelsCombined(StratifiedCombination combination)
        : base(Subject.Panels, FindingId.Of("panels", "together")) => Combination = combination;

    /// <summary>The combination.</summary>
    public StratifiedCombination Combination { get; }
}
