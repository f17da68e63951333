using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SplitBatch.Trials.Scaffold;

/// <summary>
/// A notebook with another trial folder in its cell tagged <c>parameters</c>, and without the cells tagged <c>example</c>, which only the
/// example can fill.
/// </summary>
internal static partial class NotebookCopy
{
    private static readonly JsonSerializerOptions AsNotebooks = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The notebook's text with <c>trialFolder</c> set.</summary>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="notebook">The notebook as JSON.</param>
    /// <param name="folder">The trial folder as seen from the notebook, with forward slashes.</param>
    /// <param name="trial">The trial's own name, put beside it as a remark.</param>
    /// <exception cref="InvalidDataException">It is no notebook, or has no such cell.</exception>
    public static string For(string name, string notebook, string folder, string trial)
    {
        var root = JsonNode.Parse(notebook) as JsonObject ?? throw new InvalidDataException($"{name} is not a notebook.");
        var cell = (root["cells"] as JsonArray)?.OfType<JsonObject>().FirstOrDefault(other => HasTag(other, "parameters"))
            ?? throw new InvalidDataException($"{name} has no cell tagged parameters.");
        var source = cell["source"] is JsonArray lines
            ? string.Concat(lines.Select(line => (string?)line))
            : (string?)cell["source"] ?? "";
        if (!Assignment().IsMatch(source)) throw new InvalidDataException($"{name} sets no trialFolder in its cell tagged parameters.");
        var text = Assignment().Replace(source, $"var trialFolder = {JsonValue.Create(folder).ToJsonString()}; // {trial}", 1);
        text = PastTrials().Replace(text, "var pastTrials = \"../..\"; // the folder that this trial and earlier ones stand in", 1);
        cell["source"] = new JsonArray([.. Lines().Matches(text).Select(line => (JsonNode)line.Value)]);
        foreach (var example in root["cells"]!.AsArray().OfType<JsonObject>().Where(other => HasTag(other, "example")).ToList())
            root["cells"]!.AsArray().Remove(example);
        return root.ToJsonString(AsNotebooks) + "\n";
    }

    private static bool HasTag(JsonObject cell, string name) =>
        (cell["metadata"]?["tags"] as JsonArray)?.Any(tag => (string?)tag == name) == true;

    [GeneratedRegex("""var trialFolder = "[^"]*";([ \t]*//[^\n]*)?""")]
    private static partial Regex Assignment();

    [GeneratedRegex("""var pastTrials = "[^"]*";([ \t]*//[^\n]*)?""")]
    private static partial Regex PastTrials();

    [GeneratedRegex("[^\n]*\n|[^\n]+$")]
    private static partial Regex Lines();
}
