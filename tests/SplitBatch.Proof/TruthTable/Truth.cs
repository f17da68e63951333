using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Simulation;

namespace SplitBatch.Proof.TruthTable;

/// <summary>How large the difference truly is: the share of tasters who can tell the beers apart.</summary>
public sealed record Truth(string Name, double Discriminators)
{
    /// <summary>The margin that every plan of the table declares.</summary>
    public const double Margin = 0.30;

    public static IReadOnlyList<Truth> All { get; } = [new("none", 0), new("small", 0.10), new("at the margin", Margin),
        new("large", 0.50)];

    /// <summary>Whether a difference shown would be shown falsely.</summary>
    public bool NoDifference => Discriminators == 0;

    /// <summary>Whether to rule the margin out would be false.</summary>
    public bool Matters => Discriminators >= Margin;

    /// <summary>Tasters alike, each as able as the share demands.</summary>
    public SimulatedTasters Alike(Protocol protocol) =>
        new(DPrimeSpread.Same(protocol.DPrime(protocol.CorrectFromDiscriminators(Discriminators))));

    /// <summary>Tasters who differ: the share can always tell, the others never.</summary>
    public SimulatedTasters Unlike { get; } = new(DPrimeSpread.Discriminators(Discriminators, dPrime: 40));

    public override string ToString() => Name;
}
