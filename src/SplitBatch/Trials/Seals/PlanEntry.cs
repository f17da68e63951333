using System.Text.Json.Nodes;

namespace SplitBatch.Trials.Seals;

/// <summary>One value of a plan by its name, for comparison and for print.</summary>
/// <param name="Name">The name, as trial.json has it; names within names are joined by a point.</param>
/// <param name="Panel">The panel whose value it is; null for one of the whole trial.</param>
/// <param name="Value">The value as text.</param>
public sealed record PlanEntry(string Name, string? Panel, string Value)
{
    /// <summary>The entry that stands for a panel as a whole.</summary>
    internal const string ThePanel = "the panel itself";

    /// <summary>Every value of a plan.</summary>
    public static IReadOnlyList<PlanEntry> Of(TrialPlan plan)
    {
        var json = PlanText.Write(plan);
        var panels = json["panels"]!.AsArray();
        json.Remove("panels");
        return
        [
            .. Flat(json, "", null),
            .. panels.Select(node => node!.AsObject()).SelectMany(panel => OfPanel(panel, panel["name"]!.GetValue<string>())),
        ];
    }

    internal bool IsAt(string name, string? panel) => Name == name && string.Equals(Panel, panel, StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<PlanEntry> OfPanel(JsonObject panel, string name) =>
        [new(ThePanel, name, "declared"), .. Flat(panel, "", name).Where(entry => entry.Name != "name")];

    private static IEnumerable<PlanEntry> Flat(JsonObject json, string within, string? panel) => json.SelectMany(pair => pair.Value switch
    {
        JsonObject { Count: > 0 } inner => Flat(inner, within + pair.Key + ".", panel),
        var value => [new PlanEntry(within + pair.Key, panel, Text(value))],
    });

    private static string Text(JsonNode? value) => value switch
    {
        null or JsonObject => "",
        JsonValue one when one.TryGetValue<string>(out var text) => text,
        JsonArray list when list.All(item => item is JsonValue) => string.Join("; ", list.Select(Text)),
        _ => value.ToJsonString(PlanText.OneLine),
    };
}
