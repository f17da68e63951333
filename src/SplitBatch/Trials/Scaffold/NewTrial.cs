using SplitBatch.Brewing;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Scaffold;

/// <summary>What a brewer says about a trial before anything is brewed: enough to make its folder.</summary>
/// <example>
/// <code>
/// var trial = new NewTrial { Title = "Dry hops: warm or cold?", Variable = "temperature of dry hopping", NameA = "warm", NameB = "cold"
/// };
/// </code>
/// </example>
public sealed record NewTrial
{
    /// <summary>The trial's title.</summary>
    public string Title { get; init => field = Guard.NotBlank(value, nameof(Title)).Trim(); } = "A split-batch trial";

    /// <summary>The one thing that differs between the halves.</summary>
    public string Variable { get; init => field = Guard.NotBlank(value, nameof(Variable)).Trim(); } = "the one thing that is changed";

    /// <summary>The name of half A, the reference.</summary>
    public string NameA { get; init => field = Guard.NotBlank(value, nameof(NameA)).Trim(); } = "as usual";

    /// <summary>The name of half B, the changed one.</summary>
    public string NameB { get; init => field = Guard.NotBlank(value, nameof(NameB)).Trim(); } = "changed";

    /// <summary>The question as one sentence; one is made of the names where none is given.</summary>
    public string Question { get =>
        field ?? $"Can tasters tell {NameB} from {NameA}, when everything but the {Variable} is the same?"; init; }

    /// <summary>The units of the files.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>How the CSV files write decimals.</summary>
    public DecimalMark Decimals { get; init; }

    /// <summary>The wort of one half at the end of the boil, measured cool; 20 L or 5 gal unless said.</summary>
    public Volume Volume { get => field.Value > 0
        ? field
        : Units == UnitSystem.Us ? Volume.FromUsGallons(5) : Volume.FromLiters(20); init; }

    /// <summary>The gravity at the end of the boil.</summary>
    public Gravity Gravity { get; init; } = Gravity.FromSpecific(1.050);

    /// <summary>The estimated bitterness that both halves aim at, in IBU, in [1, 200].</summary>
    public double Target { get; init => field = Guard.InRange(value, 1.0, 200.0, "the target in IBU"); } = 30;

    /// <summary>What is poured and asked at the panel.</summary>
    public Protocol Protocol { get; init; } = Protocol.Triangle;

    /// <summary>The share of discriminators that would matter, above 0 and below 1.</summary>
    public double Margin { get; init => field = Guard.OpenShare(value, "the margin"); } = 0.30;

    /// <summary>How many people will taste; as many as a power of 80 % needs unless said.</summary>
    public int Tasters { get => field > 0 ? field : TastersNeeded; init =>
        field = Guard.InRange(value, 1, 100_000, "the number of tasters"); }

    /// <summary>What in the beers may harm somebody; null where it is to be said later.</summary>
    public Allergens? Allergens { get; init; }

    /// <summary>
    /// The size from which the panel shows a difference as large as the margin in 80 % of cases; 40 where the protocol has no known
    /// chance.
    /// </summary>
    public int TastersNeeded => Protocol.HasKnownChance ? Panel.Planning.Power.TastersNeeded(Protocol, 0.05, 0.80, Margin).First : 40;
}
