using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>Text as notebooks hold it: one text, or a list of lines that each keep their line end.</summary>
internal static class MultilineText
{
    public static bool IsText(JsonNode? node) =>
        node is JsonValue value ? value.TryGetValue<string>(out _)
            : node is JsonArray lines && lines.All(l => l is JsonValue v && v.TryGetValue<string>(out _));

    public static string Join(JsonNode? node) => node switch
    {
        JsonArray lines =>
            string.Concat(lines.Select(l => l is JsonValue v && v.TryGetValue<string>(out var line) ? line : l?.ToJsonString())),
        JsonValue value when value.TryGetValue<string>(out var text) => text,
        _ => "",
    };

    public static JsonArray Split(string text)
    {
        var lines = new JsonArray();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }
}
