using SplitBatch.Panel.Protocols;
using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Panel.Serving;

/// <summary>What a panel takes in beer, what it gives each taster in alcohol, and what to mind.</summary>
public sealed record PourPlan
{
    private PourPlan()
    {
    }

    /// <summary>The serving plan that is poured.</summary>
    public required ServingPlan Plan { get; init; }

    /// <summary>How it is poured.</summary>
    public required PourOptions Options { get; init; }

    /// <summary>Both beers, A first.</summary>
    public required IReadOnlyList<BeerNeeded> Beers { get; init; }

    /// <summary>Every taster at every sitting.</summary>
    public required IReadOnlyList<AlcoholServed> Tasters { get; init; }

    /// <summary>What to mind, as sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The taster who gets most alcohol in a sitting.</summary>
    public AlcoholServed Most => Tasters.MaxBy(taster => taster.Alcohol.Milliliters)!;

    /// <summary>The beer needed, the alcohol served and the cautions for a serving plan.</summary>
    /// <param name="plan">The serving plan.</param>
    /// <param name="alcoholA">Alcohol of beer A in percent by volume, in [0, 20]: 5 for 5 %.</param>
    /// <param name="alcoholB">The same for beer B.</param>
    /// <param name="options">How it is poured; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or a share was given where a percentage is
    /// meant.</exception>
    public static PourPlan For(ServingPlan plan, double alcoholA, double alcoholB, PourOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        options ??= new PourOptions();
        double[] alcohol = [Percent(alcoholA, nameof(alcoholA)), Percent(alcoholB, nameof(alcoholB))];
        double pour = Guard.InRange(options.Pour.Milliliters, 5, 500, "pour in mL");
        double spare = Guard.InRange(options.Spare, 0, 2, "spare as a share (15 % is 0.15)");
        Guard.InRange(options.Serving.DegreesCelsius, -2, 40, "serving temperature in °C");
        if (options.Container is { } size) Guard.Positive(size.Milliliters, "container in mL");

        // A/not-A asks for a beer that the taster has just learnt: one named cup of A at each sitting.
        int learning = plan.Design.Answer == AnswerKind.OwnOrNot ? 1 : 0;
        var sittings = plan.Sets.GroupBy(set => (set.Taster, set.Session)).ToArray();
        AlcoholServed[] tasters = [.. sittings.Select(sitting =>
        {
            int a = learning + sitting.Sum(set => set.Cups.Count(cup => cup.Beer == Side.A)),
                b = sitting.Sum(set => set.Cups.Count(cup => cup.Beer == Side.B));
            return new AlcoholServed(sitting.Key.Taster, sitting.Key.Session, a + b, (a + b) * options.Pour,
                Volume.FromMilliliters(((a * alcohol[0]) + (b * alcohol[1])) * pour / 100));
        })];
        BeerNeeded[] beers = [.. Enum.GetValues<Side>().Select(side =>
        {
            int cups = plan.Sets.Sum(set => set.Cups.Count(cup => cup.Beer == side)) + (side == Side.A ? learning * sittings.Length : 0);
            var needed = cups * options.Pour * (1 + spare);
            return new BeerNeeded(side, cups, cups * options.Pour, needed,
                options.Container is { } container ? (int)Math.Ceiling((needed / container) - 1e-9) : null);
        })];
        var made = new PourPlan { Plan = plan, Options = options, Beers = beers, Tasters = tasters, Cautions = [] };
        return made with
        {
            Cautions = PourCautions.For(made, sittings.Max(sitting => sitting.Count()), Math.Abs(alcohol[0] - alcohol[1])),
        };
    }

    /// <summary>Beer and alcohol in one line.</summary>
    public override string ToString() => Invariant(
        $"{Beers[0]}; {Beers[1]}; at most {Most.Drunk} for one taster in one sitting");

    private static double Percent(double value, string name) => value is > 0 and < 0.2
        ? throw new ArgumentOutOfRangeException(name,
            Invariant($"{name} is {value}; it is a percentage by volume, so write {Printed.Chosen(value * 100)} for ")
                + Invariant($"{Printed.ChosenPercent(value)}, or 0 for a beer without alcohol."))
        : Guard.InRange(value, 0.0, 20.0, name);
}

/// <summary>How much of one beer a panel takes.</summary>
/// <param name="Beer">Which beer.</param>
/// <param name="Cups">Cups poured of it, those to learn the beer included.</param>
/// <param name="InCups">What the cups hold.</param>
/// <param name="WithSpare">What to have at hand.</param>
/// <param name="Containers">Whole containers to open; null where no container was named.</param>
public sealed record BeerNeeded(Side Beer, int Cups, Volume InCups, Volume WithSpare, int? Containers)
{
    /// <summary>What to have at hand, in the units of the pour: <c>2.07 L</c>, or <c>70 fl oz</c>.</summary>
    public string AtHand => Spoken.Cups(WithSpare);

    /// <summary>For example <c>beer A: 36 cups, 1.80 L in the cups, 2.07 L with spare (5 containers)</c>.</summary>
    public override string ToString() => Invariant(
        $"beer {Beer}: {Cups} cups, {Spoken.Cups(InCups)} in the cups, {AtHand} with ")
            + Invariant($"spare{(Containers is { } n ? Invariant($" ({n} container{(n == 1 ? "" : "s")})") : "")}");
}

/// <summary>What one taster drinks in one sitting if every cup is emptied.</summary>
/// <param name="Taster">The taster.</param>
/// <param name="Session">The sitting.</param>
/// <param name="Cups">Cups served.</param>
/// <param name="Beer">Beer served.</param>
/// <param name="Alcohol">Pure alcohol in it, by volume.</param>
public sealed record AlcoholServed(string Taster, int Session, int Cups, Volume Beer, Volume Alcohol)
{
    /// <summary>Ethanol at 20 °C, in g/mL: 0.78924 (OIML R 22; from memory).</summary>
    public const double EthanolDensity = 0.78924;

    /// <summary>Pure alcohol in it, by mass.</summary>
    public Mass AlcoholMass => Mass.FromGrams(Alcohol.Milliliters * EthanolDensity);

    /// <summary>The alcohol in words: <c>12.5 mL (9.9 g) of alcohol</c>.</summary>
    public string Drunk => $"{Printed.Fixed(Alcohol.Milliliters, 1, "mL")} ({Printed.Mass(AlcoholMass, UnitSystem.Metric)}) of alcohol";

    /// <summary>For example <c>T07, session 1: 5 cups, 250 mL of beer, 12.5 mL (9.9 g) of alcohol</c>.</summary>
    public override string ToString() => Invariant(
        $"{Taster}, session {Session}: {Cups} cups, {Spoken.Cup(Beer)} of beer, {Drunk}");
}
