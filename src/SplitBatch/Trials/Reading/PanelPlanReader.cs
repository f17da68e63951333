using SplitBatch.Panel;

namespace SplitBatch.Trials;

/// <summary>Reads the panels that trial.json declares.</summary>
internal static class PanelPlanReader
{
    private static readonly Dictionary<string, StoppingRule> Rules = new()
    {
        ["fixed"] = StoppingRule.Fixed,
        ["sequential"] = StoppingRule.Sequential,
    };

    /// <summary>The plans that could be read, in the file's order.</summary>
    public static IReadOnlyList<PanelPlan> Read(JsonSection json)
    {
        var plans = new List<PanelPlan>();
        foreach (var section in json.Sections("panels"))
        {
            if (ReadPlan(section) is not { } plan) continue;
            if (plans.Exists(known => string.Equals(known.Name, plan.Name, StringComparison.OrdinalIgnoreCase)))
            {
                section.Refuse("name", "Two panels have this name.", "each panel once", plan.Name);
                continue;
            }

            plans.Add(plan);
        }

        return plans;
    }

    private static PanelPlan? ReadPlan(JsonSection json)
    {
        var name = json.Text("name", "a short name, such as \"main\"");
        var protocol = json.Text("protocol", "a protocol, such as \"triangle\"") is { } text ? json.Make("protocol", () => Protocol.Parse(text)) : null;
        var tasters = json.OptionalWhole("tasters", 1, 100_000);
        if (tasters is null && !json.Names.Contains("tasters")) json.Missing("tasters", "how many people, as \"tasters\": 24");
        var alpha = json.OptionalShare("alpha");
        var power = json.OptionalShare("power");
        var margin = json.OptionalShare("margin");
        var beta = json.OptionalShare("beta");
        var replicates = json.OptionalWhole("replicates", 1, 100);
        var seed = json.OptionalWhole("seed");
        var stopping = json.OptionalOneOf("stopping", Rules);
        var declared = json.OptionalDate("declared");
        if (name is null || protocol is null || tasters is null) return null;
        var plan = new PanelPlan(protocol, tasters.Value)
        {
            Name = name,
            Replicates = replicates ?? 1,
            Seed = seed ?? 0,
            Stopping = stopping ?? StoppingRule.Fixed,
            Declared = declared,
        };
        plan = json.Make("alpha", () => plan with { Alpha = alpha ?? plan.Alpha }) ?? plan;
        plan = json.Make("power", () => plan with { Power = power ?? plan.Power }) ?? plan;
        plan = json.Make("margin", () => plan with { Margin = margin ?? plan.Margin }) ?? plan;
        return json.Make("beta", () => plan with { Beta = beta ?? plan.Beta }) ?? plan;
    }
}
