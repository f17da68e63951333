using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Lab;
using SplitBatch.Trials.Seals;
using UnitsNet;

namespace SplitBatch.Trials.Reading;

/// <summary>What the files of a trial folder hold, once read and checked.</summary>
internal sealed record TrialContent
{
    public required TrialDescription Description { get; init; }

    public Kettle? Kettle { get; init; }

    public Mass? Scale { get; init; }

    public IReadOnlyList<HopLot> Lots { get; init; } = [];

    public required IReadOnlyDictionary<Side, IReadOnlyList<HopCharge>> Charges { get; init; }

    public BatchLog? BatchLog { get; init; }

    public required LabReturn Lab { get; init; }

    public LabSection LabSection { get; init; } = LabSection.Empty;

    public IReadOnlyList<PanelRecord> Panels { get; init; } = [];

    public required PlanState State { get; init; }

    /// <summary>The panels as trial.json would have them read, where it was changed too late; empty where it was not.</summary>
    public IReadOnlyList<PanelRecord> AsChanged { get; init; } = [];

    public bool CombinesPanels { get; init; }

    public IReadOnlyDictionary<string, string> Notes { get; init; } = new Dictionary<string, string>();

    public IReadOnlyList<Fault> Warnings { get; init; } = [];
}
