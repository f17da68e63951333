using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>What was declared about a panel before it was served. It cannot be changed by the result.</summary>
/// <remarks>Checked when built and when changed by <c>with</c>. The same values stand in the trial folder under <c>panels</c>.</remarks>
public sealed record PanelPlan
{
    private readonly Protocol protocol = Protocol.Triangle;
    private readonly string name = "main";
    private readonly double alpha = 0.05;
    private readonly double power = 0.80;
    private readonly double margin = 0.30;
    private readonly double? marginAsDPrime;
    private readonly double beta = 0.05;
    private readonly int tasters = 1;
    private readonly int replicates = 1;
    private readonly int? sessions;
    private readonly string attribute = "bitter";
    private readonly double priorA = 1;
    private readonly double priorB = 1;

    /// <summary>A plan for a number of tasters; everything else has a default that an initialiser or <c>with</c> can change.</summary>
    /// <param name="protocol">What is poured and asked.</param>
    /// <param name="tasters">People, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">No tasters.</exception>
    public PanelPlan(Protocol protocol, int tasters)
    {
        Protocol = protocol;
        Tasters = tasters;
    }

    /// <summary>The panel's name within the trial.</summary>
    public string Name { get => name; init => name = Guard.NotBlank(value, nameof(Name)); }

    /// <summary>What is poured and asked.</summary>
    public Protocol Protocol { get => protocol; init => protocol = value ?? throw new ArgumentNullException(nameof(Protocol)); }

    /// <summary>The chance of showing a difference that is not there, above 0 and below 1.</summary>
    public double Alpha { get => alpha; init => alpha = Guard.OpenShare(value, nameof(Alpha)); }

    /// <summary>The chance wanted of showing a difference as large as the margin, above 0 and below 1.</summary>
    public double Power { get => power; init => power = Guard.OpenShare(value, nameof(Power)); }

    /// <summary>The share of discriminators that would matter, above 0 and below 1.</summary>
    public double Margin { get => margin; init => (margin, marginAsDPrime) = (Guard.OpenShare(value, nameof(Margin)), null); }

    /// <summary>
    /// The margin as a d-prime, where it was declared so; null where it was declared as a share in the task. Then <see cref="Margin"/> is
    /// the share that it makes in this protocol.
    /// </summary>
    public double? MarginAsDPrime
    {
        get => marginAsDPrime;
        init
        {
            marginAsDPrime = value;
            if (value is { } distance) margin = DeclaredMargin.OfDPrime(distance).ShareIn(Protocol);
        }
    }

    /// <summary>The margin as it was declared.</summary>
    public DeclaredMargin DeclaredMargin =>
        MarginAsDPrime is { } distance ? DeclaredMargin.OfDPrime(distance) : DeclaredMargin.OfShare(Margin);

    /// <summary>The chance of ruling the margin out although it is true, above 0 and below 1.</summary>
    public double Beta { get => beta; init => beta = Guard.OpenShare(value, nameof(Beta)); }

    /// <summary>People, at least 1.</summary>
    public int Tasters { get => tasters; init => tasters = Guard.InRange(value, 1, 100_000, nameof(Tasters)); }

    /// <summary>Sets served to each taster, at least 1. Repeats by one taster are not new tasters.</summary>
    public int Replicates { get => replicates; init => replicates = Guard.InRange(value, 1, 100, nameof(Replicates)); }

    /// <summary>Sittings over which tasters are shared out, at least 1; null where the plan leaves it open.</summary>
    public int? Sessions
    {
        get => sessions;
        init => sessions = value is { } stated ? Guard.InRange(stated, 1, 1000, nameof(Sessions)) : null;
    }

    /// <summary>
    /// The seed of the serving orders and codes; null where it is drawn when the panel is served, and stands in the key alone.
    /// </summary>
    public int? Seed { get; init; }

    /// <summary>When to stop: at the planned number, or by a sequential rule.</summary>
    public StoppingRule Stopping { get; init; }

    /// <summary>The day the plan was declared; null where it was not.</summary>
    public DateOnly? Declared { get; init; }

    /// <summary>The beer that should show more of <see cref="Attribute"/>, where the protocol fixes a direction.</summary>
    public Side Expected { get; init; } = Side.B;

    /// <summary>The property that tasters are asked about, where the protocol names one: the beer that is more "bitter".</summary>
    public string Attribute { get => attribute; init => attribute = Guard.NotBlank(value, nameof(Attribute)); }

    /// <summary>
    /// Whether tasters are asked which half they like better: a pair that asks in both directions for a property of liking. Whether they
    /// can tell is another question.
    /// </summary>
    public bool AsksPreference => Protocol is { NamesTheProperty: true, Sides: 2 } && Liking.IsNamed(Attribute);

    /// <summary>First parameter of the beta prior of the share of discriminators, above 0; 1 and 1 is flat.</summary>
    public double PriorA { get => priorA; init => priorA = Guard.Positive(value, nameof(PriorA)); }

    /// <summary>Second parameter of the prior, above 0; (1, 9) expects about 10 % discriminators.</summary>
    public double PriorB { get => priorB; init => priorB = Guard.Positive(value, nameof(PriorB)); }

    /// <summary>What tasters are asked besides the difference: attributes that they rate, <c>preferred</c>, <c>comment</c>.</summary>
    public IReadOnlyList<string> AskedBeside { get; init; } = [];

    /// <summary>How doubtful ballots are counted.</summary>
    public BallotRules Rules { get; init; } = BallotRules.Default;

    /// <summary>Sets to be served in all.</summary>
    public int Sets => Tasters * Replicates;

    /// <summary>The right answers that will show a difference; null where none would do or the protocol has no known chance.</summary>
    public int? CriticalCount => Protocol.HasKnownChance ? Panel.Planning.Power.CriticalCount(Protocol, Tasters, Alpha) : null;

    /// <summary>
    /// The right answers at or below which the margin will be ruled out; -1 where none would do; null where the protocol has no known
    /// chance.
    /// </summary>
    public int? SimilarityCount => Protocol.HasKnownChance ? Panel.Planning.Power.SimilarityCount(Protocol, Tasters, Margin, Beta) : null;

    /// <summary>What a panel of this size can detect and can rule out, at the plan's levels.</summary>
    /// <exception cref="InvalidOperationException">The protocol has no known guessing chance.</exception>
    public PanelReach Reach() => PanelReach.Of(Protocol, Tasters, Alpha, Power, Beta);

    /// <summary>The sequential plan with this plan's levels, ending at <see cref="Tasters"/> in any case.</summary>
    /// <exception cref="InvalidOperationException">The plan stops at a fixed number.</exception>
    /// <exception cref="ArgumentException">The protocol is two-sided.</exception>
    public WaldPlan Sequential() => Stopping == StoppingRule.Sequential
        ? WaldPlan.Of(Protocol, Margin, Alpha, Beta, Tasters)
        : throw new InvalidOperationException($"The plan \"{Name}\" stops at {Tasters} tasters and not by a sequential rule; declare "
            + $"stopping as sequential before serving.");

    /// <summary>Where practice departed from the plan: an empty list where it did not.</summary>
    /// <param name="practice">What was done.</param>
    public IReadOnlyList<Departure> Departures(PanelPractice practice) => Departure.Between(this, practice);

    /// <summary>
    /// For example <c>main: triangle, 24 tasters, alpha 5 %, margin 30 % (beta 5 %); 13 right show a difference, 8 or fewer rule the
    /// margin out.</c>
    /// </summary>
    public override string ToString()
    {
        var repeats = Replicates == 1 ? "" : $" x {Replicates} sets";
        var rule = !Protocol.HasKnownChance
            ? "."
            : $"; {(CriticalCount is { } c ? $"{c} right show a difference" : "no count shows a difference")}, "
                + (SimilarityCount >= Tasters * Protocol.Chance
                    ? $"{SimilarityCount} or fewer rule the margin out."
                    : "none rules the margin out.");
        return $"{Name}: {Protocol.Name}, {Tasters} tasters{repeats}, alpha {Printed.ChosenPercent(Alpha)}, margin "
            + $"{Printed.ChosenPercent(Margin)} (beta {Printed.ChosenPercent(Beta)}){(Replicates == 1 ? rule : ".")}";
    }
}

/// <summary>When a panel stops.</summary>
public enum StoppingRule
{
    /// <summary>At the planned number of tasters, and not before or after.</summary>
    Fixed,

    /// <summary>By Wald's sequential test, whose boundaries were fixed beforehand.</summary>
    Sequential,
}
