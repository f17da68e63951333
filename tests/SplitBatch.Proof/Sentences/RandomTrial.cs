using System.Text.Json;
using System.Text.Json.Nodes;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.Sentences;

/// <summary>The files of one random trial, as people have them: nothing of the library's own types leaves this room.</summary>
internal sealed class RandomTrial
{
    private static readonly JsonSerializerOptions Plain = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly (string Variable, string[] Follows)[] Variables =
    [
        ("form of the bittering hop", []), ("form of the bittering hop", ["volume into fermenter"]),
        ("mash temperature", ["final gravity"]),
        ("temperature of the mash", []), ("pH", []), ("yeast strain", ["final gravity", "carbonation"]), ("bitterness", []),
        ("hop variety", ["bitterness", "colour"]),
    ];

    private static readonly (string A, string B)[] Names =
    [
        ("cones", "pellets"), ("whole cones", "pellets"), ("one rest", "two rests"), ("early hops", "late hops"),
        ("the whole cones of the harvest before last", "the pellets that were pressed from the same bales"), ("ale 1", "ale 2"),
    ];

    private static readonly string[] Intentions =
        ["pH and yeast lots", "packaging day and carbonation", "one mash, its wort divided by weight",
            "fermentation temperature; pitching temperature", "original gravity, final gravity and colour", "water from one tank"];

    private readonly Dictionary<string, string> files = [];

    private RandomTrial(int seed)
    {
        var dice = new Dice(seed);
        var (variable, follows) = dice.Of(Variables);
        var (a, b) = dice.Of(Names);
        var json = new JsonObject
        {
            ["title"] = "A trial", ["question"] = "Can tasters tell the halves apart?", ["variable"] = variable,
            ["beers"] = new JsonObject { ["A"] = a, ["B"] = b },
            ["held equal"] = Texts(dice.Some(Intentions, 0.3)), ["follows from the variable"] = Texts(follows),
            ["units"] = dice.Of("metric", "metric", "us"),
        };
        if (dice.Chance(0.2)) json["invented"] = true;
        RandomBrew.Add(dice, json, files);
        RandomLab.Add(dice, json, files);
        var truth = RandomTruth.Of(dice);
        var panels = new JsonArray();
        foreach (var name in dice.Of<string[]>([], ["main"], ["main"], ["main"], ["main"], ["main", "main.2"], ["home", "main"],
            ["main", "evening", "home"]))
        {
            var panel = new RandomPanel(dice, name, truth);
            panels.Add(panel.Plan);
            foreach (var (file, text) in panel.Files) files[file] = text;
        }

        if (panels.Count > 0) json["panels"] = panels;
        if (dice.Chance(0.6)) json["panels together"] = dice.Of("stratified", "stratified", "side by side");
        files["trial.json"] = json.ToJsonString(Plain);
    }

    /// <summary>Each file by its name within the folder.</summary>
    public IReadOnlyDictionary<string, string> Files => files;

    /// <summary>The trial of a seed.</summary>
    public static RandomTrial Of(int seed) => new(seed);

    internal static JsonArray Texts(IEnumerable<string> texts) => [.. texts.Select(text => (JsonNode)text)];
}

/// <summary>
/// What people of one trial can tell: nothing, all alike a little, some all and others nothing, or the halves the other way round.
/// </summary>
/// <param name="Able">The share of people who can tell.</param>
/// <param name="Ability">How often somebody who can tell does so; the rest is guessed.</param>
/// <param name="Opposite">The share of those able who find the halves the other way round.</param>
/// <param name="Preference">The chance that somebody likes half B better.</param>
internal sealed record RandomTruth(double Able, double Ability, double Opposite, double Preference)
{
    public static RandomTruth Of(Dice dice) => new(
        dice.Of(0, 0, 0.15, 0.3, 0.5, 1), dice.Of(0.3, 1, 1), dice.Of(0, 0, 0, 0.5, 1), dice.Of(0.5, 0.5, 0.7, 0.9, 0.2));
}
