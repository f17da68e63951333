using System.Globalization;
using System.Text.Json.Nodes;
using SplitBatch.Panel;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Proof.Sentences;

/// <summary>One random panel: its plan, its key, its ballots with all that goes wrong with ballots, ratings and comments.</summary>
internal sealed class RandomPanel
{
    private static readonly string[] Comments =
        ["bitter", "not bitter", "soft and malty", "citrus, a little harsh", "less sweet", "floral; rosemary", "dry finish, drying",
            "pineapple", "nothing to say", "thin, I think"];

    private readonly Dice dice;
    private readonly PanelPlan plan;
    private readonly string name;
    private readonly Dictionary<string, string> files = [];

    public RandomPanel(Dice dice, string name, RandomTruth truth)
    {
        (this.dice, this.name) = (dice, name);
        var protocol = dice.Of(Protocol.All);
        var repeats = dice.Chance(0.25) ? dice.Whole(2, 15) : 1;
        var tasters = dice.Size(2, repeats > 1 ? 40 : 200);
        var sequential = repeats == 1 && protocol is { HasKnownChance: true, Sides: 1 } && dice.Chance(0.12);
        Plan = Declared(protocol, tasters, repeats, sequential);
        plan = new PanelPlan(protocol, Math.Max(1, dice.Chance(0.7) ? tasters : tasters + dice.Whole(-3, 3)))
        {
            Name = name, Replicates = repeats, Seed = dice.Whole(1, 9999), Attribute = (string?)Plan["attribute"] ?? "bitter",
            Expected = (string?)Plan["expected"] == "A" ? Side.A : Side.B,
        };
        Plan["seed"] = plan.Seed;
        if (dice.Chance(0.05)) return;
        var letter = dice.Of("T", "T", name[..1].ToUpperInvariant());
        var key = ServingPlan.Balanced(plan,
            new ServingOptions { Tasters = [.. Enumerable.Range(1, plan.Tasters).Select(i => $"{letter}{i:00}")],
                Sessions = plan.Tasters > 8 && dice.Chance(0.2) ? 2 : 1 });
        if (dice.Chance(0.08)) key = InOneOrder(key);
        files[ServingKeyFile.NameOf(name)] = ServingKeyFile.Write(key);
        if (dice.Chance(0.05)) return;
        files[BallotFile.NameOf(name)] = new RandomBallots(dice, key, truth, Plan).Text;
        if (dice.Chance(0.2)) files[RatingFile.NameOf(name)] = Ratings(key);
        if (dice.Chance(0.2)) files[CommentFile.NameOf(name)] = CommentRows(key);
    }

    /// <summary>The plan as trial.json holds it.</summary>
    public JsonObject Plan { get; }

    /// <summary>Key, ballots, ratings and comments.</summary>
    public IReadOnlyDictionary<string, string> Files => files;

    private JsonObject Declared(Protocol protocol, int tasters, int repeats, bool sequential)
    {
        var json = new JsonObject { ["name"] = name, ["protocol"] = protocol.Name, ["tasters"] = tasters, ["replicates"] = repeats };
        if (dice.Chance(0.8)) json["declared"] = dice.Of("2026-04-20", "2026-04-20", "2026-04-20", "2026-05-20");
        json["alpha"] = dice.Of(0.05, 0.05, 0.1, 0.01, 0.025);
        json["beta"] = dice.Of(0.05, 0.05, 0.1, 0.2);
        if (protocol.HasKnownChance && !sequential && dice.Chance(0.2)) json["margin as d-prime"] = dice.Of(0.5, 1, 1.5, 2);
        else json["margin"] = dice.Of(0.1, 0.2, 0.3, 0.3, 0.4, 0.5, 0.725);
        if (sequential) json["stopping"] = "sequential";
        if (protocol.NamesTheProperty)
        {
            json["expected"] = dice.Of("A", "B", "B");
            json["attribute"] = protocol.Sides == 2 && dice.Chance(0.4)
                ? dice.Of("preferred", "liked better")
                : dice.Of("bitter", "malty", "sweet");
        }

        if (dice.Chance(0.1)) json["prior"] = new JsonObject { ["a"] = dice.Of(1, 2, 0.5), ["b"] = dice.Of(1, 9, 3) };
        if (dice.Chance(0.35)) json["rules"] = Rules();
        return json;
    }

    private JsonObject Rules()
    {
        var rules = new JsonObject();
        if (dice.Chance(0.5)) rules["duplicates"] = dice.Of("first", "last", "first if equal");
        foreach (var doubtful in dice.Some(["knew variable", "brewer", "late"], 0.4))
            rules[doubtful] = dice.Of("exclude", "count", "count as wrong");
        foreach (var absent in dice.Some(["no usable answer", "missing"], 0.3)) rules[absent] = dice.Of("exclude", "count as wrong");
        if (dice.Chance(0.1)) rules["closes"] = "2026-05-02 19:40";
        if (dice.Chance(0.1)) rules["brewers"] = RandomTrial.Texts(["T02"]);
        return rules;
    }

    private static ServingPlan InOneOrder(ServingPlan balanced) =>
        balanced.Design.Orders[0].Reference is not null ? balanced
        : ServingKey.ToPlan([.. balanced.Key.Select(row => row with { Beer = balanced.Design.Orders[0].Beers[row.Position - 1] })],
            balanced.Seed, balanced.Expected);

    private string Ratings(ServingPlan key)
    {
        string[] attributes = dice.Of<string[]>(["bitterness"], ["bitterness", "liking"], ["bitterness", "liking", "body"]);
        var (apart, noise) = (dice.Of(0.0, 0, 1, 2.5), dice.Of(0.5, 1.0, 1.5));
        var rows = from set in key.Sets from cup in set.CodedCups where !dice.Chance(0.03)
            select string.Join(',', [set.Taster, Number(set.Number), cup.Code,
                .. attributes.Select(_ => Number(Math.Clamp(Math.Round(dice.Near(5 + (cup.Beer == Side.B ? apart : 0), noise)), 0, 10)))]);
        return $"taster,set,code,{string.Join(',', attributes)}\n{string.Join('\n', rows)}\n";
    }

    private string CommentRows(ServingPlan key)
    {
        var harsh = dice.Of(0.0, 0.2, 0.9);
        var rows = from set in key.Sets from cup in set.CodedCups where dice.Chance(0.4)
            select $"{set.Taster},{set.Number},{cup.Code},\"{(cup.Beer == Side.B && dice.Chance(harsh) ? "harsh" : dice.Of(Comments))}\"";
        return $"taster,set,code,comment\n{string.Join('\n', rows)}\n";
    }

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);
}
