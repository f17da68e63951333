using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.BrewDay;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials.Reading;

/// <summary>What a trial asks and what it changes: the part of trial.json that is words.</summary>
public sealed record TrialDescription
{
    private static readonly Dictionary<string, UnitSystem> Systems = new() { ["metric"] = UnitSystem.Metric, ["us"] = UnitSystem.Us };
    private static readonly Dictionary<string, HopDifference> HopDifferences =
        PlainWords.Dictionary<HopDifference>(difference => difference.InWords());

    private static readonly Dictionary<string, DecimalMark> Marks = new() { ["point"] = DecimalMark.Point, ["comma"] = DecimalMark.Comma };

    /// <summary>The trial's title.</summary>
    public required string Title { get; init; }

    /// <summary>The question, as one sentence.</summary>
    public required string Question { get; init; }

    /// <summary>Why the answer matters; empty when not given.</summary>
    public string Why { get; init; } = "";

    /// <summary>The one thing that differs between the halves.</summary>
    public required string Variable { get; init; }

    /// <summary>What would change the brewer's mind, written down before pouring; empty when not given.</summary>
    public string WouldChangeMyMind { get; init; } = "";

    /// <summary>What is held equal between the halves.</summary>
    public IReadOnlyList<string> HeldEqual { get; init; } = [];

    /// <summary>Quantities of the batch log that differ because of the variable, and so are no confound.</summary>
    public IReadOnlyList<string> FollowsFromVariable { get; init; } = [];

    /// <summary>The quantities that the trial changes on purpose: the variable itself, and what follows from it.</summary>
    public ChangedQuantities Changed => new(Variable, FollowsFromVariable);

    /// <summary>In what the hop lots differ on purpose, or null when the variable is no difference between lots.</summary>
    public HopDifference? HopVariable { get; init; }

    /// <summary>The name of each half.</summary>
    public required IReadOnlyDictionary<Side, string> Beers { get; init; }

    /// <summary>The estimated bitterness that both halves aim at, or null when the trial sets none.</summary>
    public BitternessUnits? Target { get; init; }

    /// <summary>The day of the brew, as planned or as it was; null when trial.json does not say.</summary>
    public DateOnly? BrewDay { get; init; }

    /// <summary>What in the beers may harm somebody; null while it has not been said, and then no sheet is printed.</summary>
    public Allergens? Allergens { get; init; }

    /// <summary>Whether the trial is an example with invented data.</summary>
    public bool Invented { get; init; }

    /// <summary>The units that tables and write-ups use.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>How the CSV files write decimals, or null to tell by what separates their values.</summary>
    public DecimalMark? Decimals { get; init; }

    /// <summary>Reads the description; null when a needed part is missing, and each such part is a fault.</summary>
    internal static TrialDescription? Read(JsonSection json)
    {
        var title = json.Text("title");
        var question = json.Text("question", "the question as one sentence");
        var variable = json.Text("variable", "the one thing that differs between the halves");
        var beers = ReadBeers(json);
        var target = json.Section("target")?.OptionalNumber("bitterness [IBU]", 1, 200);
        var described = title is null || question is null || variable is null || beers is null
            ? null
            : new TrialDescription { Title = title, Question = question, Variable = variable, Beers = beers };
        var why = json.OptionalText("why");
        var mind = json.OptionalText("would change my mind");
        var held = json.Texts("held equal");
        var follows = json.Texts("follows from the variable");
        var hopVariable = json.OptionalOneOf("hop variable", HopDifferences);
        var brewDay = json.OptionalDate("brew day");
        var allergens = json.Texts("allergens") is { Count: > 0 } words ? json.Make("allergens", () => Allergens.Of(words)) : null;
        var invented = json.Flag("invented");
        var units = json.OptionalOneOf("units", Systems) ?? UnitSystem.Metric;
        var decimals = json.OptionalOneOf("decimals", Marks);
        return described is null ? null : described with
        {
            Why = why ?? "",
            WouldChangeMyMind = mind ?? "",
            HeldEqual = held,
            FollowsFromVariable = follows,
            HopVariable = hopVariable,
            Target = target is { } value ? BitternessUnits.From(value) : null,
            BrewDay = brewDay,
            Allergens = allergens,
            Invented = invented,
            Units = units,
            Decimals = decimals,
        };
    }

    /// <summary>The words of this description that a seal fixes; the panels are added where they are known.</summary>
    internal TrialPlan ToPlan() => new()
    {
        Question = Question,
        Variable = Variable,
        Beers = Beers,
        HopVariable = HopVariable?.InWords() ?? "",
        WouldChangeMyMind = WouldChangeMyMind,
        HeldEqual = HeldEqual,
        FollowsFromVariable = FollowsFromVariable,
        Panels = [],
        Deciding = "",
    };

    /// <summary>This description with the words of a plan: what was sealed stands, whatever trial.json says since.</summary>
    internal TrialDescription AsSealed(TrialPlan plan) => this with
    {
        Question = plan.Question,
        Variable = plan.Variable,
        Beers = plan.Beers,
        HopVariable = HopDifferences.TryGetValue(plan.HopVariable, out var difference) ? difference : null,
        WouldChangeMyMind = plan.WouldChangeMyMind,
        HeldEqual = plan.HeldEqual,
        FollowsFromVariable = plan.FollowsFromVariable,
    };

    private static Dictionary<Side, string>? ReadBeers(JsonSection json)
    {
        if (json.Section("beers") is not { } section)
        {
            json.Missing("beers", "{ \"A\": \"the reference half\", \"B\": \"the changed half\" }");
            return null;
        }

        var a = section.Text("A", "the name of the half that is the reference");
        var b = section.Text("B", "the name of the half that is changed");
        return a is null || b is null ? null : new Dictionary<Side, string> { [Side.A] = a, [Side.B] = b };
    }
}
