using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Simulation;

namespace SplitBatch.Proof.TruthTable;

/// <summary>One cell of the table: what is true, how it is asked, of how many, and how the panel is run.</summary>
public sealed record PanelCell(Truth Truth, Protocol Protocol, int Sets, Practice Practice)
{
    /// <summary>Sets for each taster where a practice has repeats.</summary>
    public const int Repeats = 4;

    /// <summary>Every cell, honest practice first.</summary>
    public static IReadOnlyList<PanelCell> All { get; } =
    [
        .. from practice in Enum.GetValues<Practice>()
           from protocol in practice.IsHonest() ? Protocols : [Protocol.Triangle]
           from sets in practice.IsHonest() ? Sizes : [24, 60]
           from truth in Truth.All
           select new PanelCell(truth, protocol, sets, practice),
    ];

    private static Protocol[] Protocols => [Protocol.Triangle, Protocol.DuoTrio, Protocol.Tetrad, Protocol.PairedDirectional];

    private static int[] Sizes => [12, 24, 60, 108];

    /// <summary>Sets that one person tastes.</summary>
    public int SetsForEach => Practice is Practice.RepeatsAsRepeats or Practice.RepeatsAsTasters ? Repeats : 1;

    /// <summary>People at the panel.</summary>
    public int Tasters => Sets / SetsForEach;

    /// <summary>What was declared before serving.</summary>
    public PanelPlan Plan => new(Protocol, Tasters)
    {
        Margin = Truth.Margin,
        Replicates = SetsForEach,
        Stopping = Practice == Practice.Sequential ? StoppingRule.Sequential : StoppingRule.Fixed,
        Declared = new DateOnly(2026, 3, 1),
    };

    /// <summary>The people who taste.</summary>
    public SimulatedTasters People => Practice switch
    {
        Practice.RepeatsAsRepeats or Practice.RepeatsAsTasters => Truth.Unlike,
        Practice.OneOrder => Truth.Alike(Protocol) with { Guessing = 0.5, FavouredShare = 0.5 },
        _ => Truth.Alike(Protocol),
    };

    public override string ToString() => $"{Practice.InWords()}, {Protocol.Name}, {Sets} sets, {Truth.Name}";
}
