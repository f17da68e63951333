using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>Reads a panel's plan: from trial.json, and from a seal, which has the same names.</summary>
internal static class PanelPlanReader
{
    private static readonly Dictionary<string, StoppingRule> Stops = new()
    {
        ["fixed"] = StoppingRule.Fixed,
        ["sequential"] = StoppingRule.Sequential,
    };

    /// <summary>The plan in one section; null where it cannot be used, and each reason is a fault.</summary>
    public static PanelPlan? Read(JsonSection json)
    {
        var name = json.Text("name", "a short name, such as \"main\"");
        var protocolName = json.Text("protocol", "a protocol, such as \"triangle\"");
        var protocol = protocolName is { } text ? json.Make("protocol", () => Protocol.Parse(text)) : null;
        var tasters = json.OptionalWhole("tasters", 1, 100_000);
        if (tasters is null && !json.Names.Contains("tasters")) json.Missing("tasters", "how many people, as \"tasters\": 24");
        var alpha = json.OptionalShare("alpha");
        var power = json.OptionalShare("power");
        var margin = json.OptionalShare("margin");
        var distance = json.OptionalNumber("margin as d-prime", 0.05, 6);
        var beta = json.OptionalShare("beta");
        var replicates = json.OptionalWhole("replicates", 1, 100);
        var sessions = json.OptionalWhole("sessions", 1, 1000);
        var seed = json.OptionalWhole("seed");
        var stopping = json.OptionalOneOf("stopping", Stops);
        var declared = json.OptionalDate("declared");
        var expected = json.OptionalOneOf("expected", Sides.ByLetter);
        var attribute = json.OptionalText("attribute");
        var beside = json.Texts("asked beside");
        var prior = json.Section("prior");
        var (priorA, priorB) = (prior?.Number("a", 0.01, 1000), prior?.Number("b", 0.01, 1000));
        var rules = json.Section("rules") is { } section ? BallotRulesReader.Read(section) : BallotRules.Default;
        if (name is null || protocol is null || tasters is null) return null;
        if (expected is null && protocol is { NamesTheProperty: true, Sides: 1 } && !json.Names.Contains("expected"))
        {
            json.Missing("expected", $"the half that should be the stronger one, as \"expected\": \"B\": {protocol.Name} asks in one "
                + $"direction, which has to be fixed before pouring");
        }

        var plan = new PanelPlan(protocol, tasters.Value)
        {
            Name = name,
            Replicates = replicates ?? 1,
            Sessions = sessions,
            Seed = seed,
            AskedBeside = beside,
            Stopping = stopping ?? StoppingRule.Fixed,
            Declared = declared,
            Expected = expected ?? Side.B,
            Attribute = attribute ?? (Liking.IsAskedBy(protocolName!) ? Liking.Preferred : "bitter"),
            PriorA = priorA ?? 1,
            PriorB = priorB ?? 1,
            Rules = rules,
        };
        plan = json.Make("alpha", () => plan with { Alpha = alpha ?? plan.Alpha }) ?? plan;
        plan = json.Make("power", () => plan with { Power = power ?? plan.Power }) ?? plan;
        plan = json.Make("margin", () => plan with { Margin = margin ?? plan.Margin }) ?? plan;
        if (distance is { } apart)
        {
            if (margin is not null)
                json.Refuse("margin as d-prime", "The margin is declared twice, as a share and as a d-prime.", "one of them",
                    apart.ToString(System.Globalization.CultureInfo.InvariantCulture));
            plan = json.Make("margin as d-prime", () => plan with { MarginAsDPrime = apart }) ?? plan;
        }

        plan = json.Make("beta", () => plan with { Beta = beta ?? plan.Beta }) ?? plan;
        if (plan.Stopping != StoppingRule.Sequential) return plan;
        _ = json.Make("stopping",
            () => protocol.HasKnownChance
                ? plan.Sequential()
                : throw new ArgumentException($"A sequential plan needs a known guessing chance; {protocol.Name} has none."));
        if (plan.Replicates > 1)
            json.Refuse("replicates", "A sequential plan takes one set from each taster, because repeats are not new tasters.", "1",
                plan.Replicates.ToString(System.Globalization.CultureInfo.InvariantCulture));
        return plan;
    }
}
