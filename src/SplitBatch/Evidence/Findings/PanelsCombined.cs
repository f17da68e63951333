using SplitBatch.Panel;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence.Findings;

/// <summary>Several panels read together by the method that trial.json names.</summary>
public sealed record PanelsCombined : Finding
{
    internal PanelsCombined(StratifiedCombination combination)
        : base(Subject.Panels, FindingId.Of("panels", "together")) => Combination = combination;

    /// <summary>The combination.</summary>
    public StratifiedCombination Combination { get; }
}

/// <summary>Several panels read together by people, because some sat at more than one.</summary>
public sealed record PeopleCombined : Finding
{
    internal PeopleCombined(ReturningPeople people, bool isOneTask)
        : base(Subject.Panels, FindingId.Of("panels", "together")) => (People, IsOneTask) = (people, isOneTask);

    /// <summary>The people with what each tasted.</summary>
    public ReturningPeople People { get; }

    /// <summary>Whether all panels were served by one protocol, so that a share of ability means one thing.</summary>
    public bool IsOneTask { get; }

    /// <summary>How many panels are combined.</summary>
    public required int Panels { get; init; }
}
