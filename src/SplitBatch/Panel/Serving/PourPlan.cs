using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Panel;

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
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or a share was given where a percentage is meant.</exception>
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
            int a = learning + sitting.Sum(set => set.Cups.Count(cup => cup.Beer == Side.A)), b = sitting.Sum(set => set.Cups.Count(cup => cup.Beer == Side.B));
            return new AlcoholServed(sitting.Key.Taster, sitting.Key.Session, a + b, (a + b) * options.Pour,
                Volume.FromMilliliters(((a * alcohol[0]) + (b * alcohol[1])) * pour / 100));
        })];
        BeerNeeded[] beers = [.. Enum.GetValues<Side>().Select(side =>
        {
            int cups = plan.Sets.Sum(set => set.Cups.Count(cup => cup.Beer == side)) + (side == Side.A ? learning * sittings.Length : 0);
            var needed = cups * options.Pour * (1 + spare);
            return new BeerNeeded(side, cups, cups * options.Pour, needed, options.Container is { } container ? (int)Math.Ceiling((needed / container) - 1e-9) : null);
        })];
        var made = new PourPlan { Plan = plan, Options = options, Beers = beers, Tasters = tasters, Cautions = [] };
        return made with { Cautions = PourCautions.For(made, sittings.Max(sitting => sitting.Count()), Math.Abs(alcohol[0] - alcohol[1])) };
    }

    /// <summary>Beer and alcohol in one line.</summary>
    public override string ToString() => Invariant(
        $"{Beers[0]}; {Beers[1]}; at most {Most.Alcohol.Milliliters:0.0} mL ({Most.AlcoholMass.Grams:0.0} g) of alcohol for one taster in one sitting");

    private static double Percent(double value, string name) => value is > 0 and < 0.2
        ? throw new ArgumentOutOfRangeException(name, Invariant($"{name} is {value}; it is a percentage by volume, so write {value * 100:0.##} for {value * 100:0.##} %, or 0 for a beer without alcohol."))
        : Guard.InRange(value, 0.0, 20.0, name);
}
