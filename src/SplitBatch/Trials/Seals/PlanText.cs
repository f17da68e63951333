using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// A plan as JSON: by the names of trial.json, so that one reader reads both, and with every value written out, so that a default that
/// changes in a later version changes no plan that was sealed before.
/// </summary>
internal static class PlanText
{
    /// <summary>The entry of trial.json that names the deciding panel; the first panel where it is left out.</summary>
    public const string DecidingName = "panel that decides";

    /// <summary>Letters as people write them, and not as escapes.</summary>
    public static readonly JsonSerializerOptions OneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Dictionary<string, bool> Together = new() { ["stratified"] = true, ["side by side"] = false };
    private static readonly Dictionary<BallotRule, string> Rule = new()
    {
        [BallotRule.Exclude] = "exclude",
        [BallotRule.Count] = "count",
        [BallotRule.CountAsWrong] = "count as wrong",
    };
    private static readonly Dictionary<DuplicateRule, string> Duplicates = new()
    {
        [DuplicateRule.First] = "first",
        [DuplicateRule.Last] = "last",
        [DuplicateRule.FirstIfEqual] = "first if equal",
    };

    /// <summary>The plan, every value written out.</summary>
    public static JsonObject Write(TrialPlan plan) => new()
    {
        ["question"] = plan.Question,
        ["variable"] = plan.Variable,
        ["beers"] = new JsonObject { ["A"] = plan.Beers[Side.A], ["B"] = plan.Beers[Side.B] },
        ["hop variable"] = plan.HopVariable,
        ["would change my mind"] = plan.WouldChangeMyMind,
        ["held equal"] = Texts(plan.HeldEqual),
        ["follows from the variable"] = Texts(plan.FollowsFromVariable),
        [DecidingName] = plan.Deciding,
        ["panels together"] = plan.ReadTogether ? "stratified" : "side by side",
        ["panels"] = new JsonArray([.. plan.Panels.Select(Write)]),
        ["lab"] = plan.Lab.DeepClone(),
    };

    /// <summary>Reads a plan from a seal; null where something is missing, and each such thing is a fault.</summary>
    public static TrialPlan? Read(JsonSection json)
    {
        var (question, variable) = (json.Text("question"), json.Text("variable"));
        var beers = json.Section("beers");
        var (a, b) = (beers?.Text("A"), beers?.Text("B"));
        var plan = new TrialPlan
        {
            Question = question ?? "",
            Variable = variable ?? "",
            Beers = new Dictionary<Side, string> { [Side.A] = a ?? "", [Side.B] = b ?? "" },
            HopVariable = json.OptionalText("hop variable") ?? "",
            WouldChangeMyMind = json.OptionalText("would change my mind") ?? "",
            HeldEqual = json.Texts("held equal"),
            FollowsFromVariable = json.Texts("follows from the variable"),
            Panels = [.. json.Sections("panels").Select(PanelPlanReader.Read).OfType<PanelPlan>()],
            Deciding = json.OptionalText(DecidingName) ?? "",
            ReadTogether = json.OptionalOneOf("panels together", Together) ?? false,
            Lab = LabOf(json.Section("lab")),
        };
        if (beers is null) json.Missing("beers", "the name of each half");
        return question is null || variable is null || a is null || b is null ? null : plan;
    }

    /// <summary>
    /// What a section about the laboratory fixes beforehand: all but the key of the samples and the way its files are read.
    /// </summary>
    public static JsonObject LabOf(JsonSection? lab) => lab?.Copy(name => name is not ("samples" or "imports")) ?? [];

    private static JsonObject Write(PanelPlan plan)
    {
        var json = new JsonObject
        {
            ["name"] = plan.Name,
            ["protocol"] = plan.Protocol.Name,
            ["tasters"] = plan.Tasters,
            ["replicates"] = plan.Replicates,
            ["alpha"] = plan.Alpha,
            ["power"] = plan.Power,
            [plan.MarginAsDPrime is null ? "margin" : "margin as d-prime"] = plan.MarginAsDPrime ?? plan.Margin,
            ["beta"] = plan.Beta,
            ["stopping"] = plan.Stopping == StoppingRule.Sequential ? "sequential" : "fixed",
            ["prior"] = new JsonObject { ["a"] = plan.PriorA, ["b"] = plan.PriorB },
            ["rules"] = Write(plan.Rules),
            ["asked beside"] = Texts(plan.AskedBeside),
        };
        if (plan.Protocol.NamesTheProperty)
        {
            json["expected"] = plan.Expected.ToString();
            json["attribute"] = plan.Attribute;
        }

        if (plan.Sessions is { } sessions) json["sessions"] = sessions;
        if (plan.Seed is { } seed) json["seed"] = seed;
        return json;
    }

    private static JsonObject Write(BallotRules rules)
    {
        var json = new JsonObject
        {
            ["duplicates"] = Duplicates[rules.Duplicates],
            ["knew variable"] = Rule[rules.KnewVariable],
            ["brewer"] = Rule[rules.Brewer],
            ["late"] = Rule[rules.Late],
            ["no usable answer"] = Rule[rules.NoUsableAnswer],
            ["missing"] = Rule[rules.Missing],
            ["brewers"] = Texts(rules.Brewers),
            ["tasters who knew"] = Texts(rules.TastersWhoKnew),
        };
        if (rules.Closes is { } closes) json["closes"] = closes.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);
        return json;
    }

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode?)text)]);
}
