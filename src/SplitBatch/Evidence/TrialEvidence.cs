using SplitBatch.Bitterness;
using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Lab;

using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>
/// All that a verdict rests on: the question, and what each strand of the trial has found. A strand that has no data yet is null or empty.
/// </summary>
public sealed record TrialEvidence
{
    /// <summary>The one thing that differs between the halves.</summary>
    public required string Variable { get; init; }

    /// <summary>The name of half A, the reference.</summary>
    public required string NameA { get; init; }

    /// <summary>The name of half B, the changed one.</summary>
    public required string NameB { get; init; }

    /// <summary>The two doses as weighed, with their estimates; null while charges are missing.</summary>
    public ChargeMatch? Doses { get; init; }

    /// <summary>The lab's bitterness of both halves; null while the return is missing.</summary>
    public LabComparison? Bitterness { get; init; }

    /// <summary>
    /// Everything the lab returned, for what its replicates and readings say about themselves; null while nothing is logged.
    /// </summary>
    public LabReturn? Lab { get; init; }

    /// <summary>Whether the lab's samples may have been swapped; null while nothing is logged.</summary>
    public SwapCheck? Samples { get; init; }

    /// <summary>The counted panels, in the order of trial.json.</summary>
    public IReadOnlyList<CountedPanel> Panels { get; init; } = [];

    /// <summary>Panels that trial.json names and that are not counted, in its order.</summary>
    public IReadOnlyList<string> NotCounted { get; init; } = [];

    /// <summary>Of those, the ones that trial.json names before the first counted panel.</summary>
    public IReadOnlyList<string> PassedOver { get; init; } = [];

    /// <summary>The panels combined by the stated method; null where the trial does not declare one.</summary>
    public StratifiedCombination? Together { get; init; }

    /// <summary>
    /// The panels combined by people, where the same people sat at several; null where they did not, or the trial names no method.
    /// </summary>
    public ReturningPeople? TogetherByPeople { get; init; }

    /// <summary>Quantities that differ because of the variable, and so are no confound.</summary>
    public IReadOnlyList<string> FollowsFromVariable { get; init; } = [];

    /// <summary>In what the hop lots differ besides the variable.</summary>
    public IReadOnlyList<HopConfound> HopConfounds { get; init; } = [];

    /// <summary>The batch log's comparison of the halves, line by line; null while the log is missing.</summary>
    public ParityCheck? Parity { get; init; }

    /// <summary>What was meant to be held equal between the halves, as trial.json states it.</summary>
    public IReadOnlyList<string> HeldEqual { get; init; } = [];

    /// <summary>The units that sentences use.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>The same evidence read by the plan as it was changed after the first ballot; null where it was not changed.</summary>
    public TrialEvidence? Changed { get; init; }

    /// <summary>Whether the data are invented.</summary>
    public bool Invented { get; init; }

    /// <summary>Whether a quantity is the variable itself, or follows from it, and so is no confound.</summary>
    internal bool IsTheVariable(string quantity) => new ChangedQuantities(Variable, FollowsFromVariable).Contains(quantity);
}
