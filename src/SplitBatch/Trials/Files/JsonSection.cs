using System.Text.Json;
using System.Text.Json.Nodes;

namespace SplitBatch.Trials.Files;

/// <summary>
/// An object of a JSON file that a person wrote. Each question names a value; an answer that cannot be given is null, and the
/// reason is added to the faults. Quantities carry their unit in the name, as <c>"volume [L]": 21</c>.
/// </summary>
internal sealed partial class JsonSection
{
    private readonly JsonObject node;
    private readonly string path;
    private readonly FaultList faults;
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);
    private readonly List<JsonSection> children = [];

    private JsonSection(string file, JsonObject node, string path, FaultList faults)
    {
        File = file;
        this.node = node;
        this.path = path;
        this.faults = faults;
    }

    /// <summary>The file's name within the trial folder.</summary>
    public string File { get; }

    /// <summary>The names in this object.</summary>
    public IEnumerable<string> Names => node.Select(pair => pair.Key);

    /// <summary>Reads a whole file; null when it is not a JSON object, and the reason goes to <paramref name="faults"/>.</summary>
    public static JsonSection? Read(string file, TextReader reader, FaultList faults)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(faults);
        var options = new JsonDocumentOptions
        {
            AllowTrailingCommas = true,
            AllowDuplicateProperties = false,
            CommentHandling = JsonCommentHandling.Skip,
        };
        try
        {
            if (JsonNode.Parse(reader.ReadToEnd().TrimStart('\uFEFF'), null, options) is JsonObject root)
            {
                return new JsonSection(file, root, "", faults);
            }

            faults.Add(new Fault(file, "The file holds no JSON object.") { Accepted = "text that starts with { and ends with }" });
        }
        catch (JsonException error)
        {
            faults.Add(new Fault(file, $"This cannot be read as JSON near here: {Reason(error)}")
            {
                Row = (int?)error.LineNumber + 1,
                Accepted = "JSON, as in the trials that come with this project",
            });
        }

        return null;
    }

    /// <summary>An object within this one, or null when there is none.</summary>
    public JsonSection? Section(string name)
    {
        switch (Ask(name))
        {
            case null:
                return null;
            case JsonObject inner:
                return Child(inner, Path(name));
            case var other:
                Refuse(name, "The value is not an object.", "{ ... }", Show(other));
                return null;
        }
    }

    /// <summary>An object of texts, name to text; empty when there is none.</summary>
    public IReadOnlyDictionary<string, string> Map(string name)
    {
        var map = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        if (Section(name) is not { } section) return map;
        foreach (var key in section.Names.ToList())
        {
            if (section.OptionalText(key) is { } text) map[key] = text;
        }

        return map;
    }

    /// <summary>The objects in a list; none when there is no list.</summary>
    public IReadOnlyList<JsonSection> Sections(string name)
    {
        if (Ask(name) is not { } found) return [];
        if (found is JsonArray array && array.All(item => item is JsonObject))
        {
            return [.. array.Select((item, index) => Child((JsonObject)item!, $"{Path(name)}[{index}]"))];
        }

        Refuse(name, "The value is not a list of objects.", "[ { ... }, { ... } ]", Show(found));
        return [];
    }

    /// <summary>The objects in a list, or the one object that stands without a list; none when there is neither.</summary>
    public IReadOnlyList<JsonSection> OneOrMore(string name) =>
        Ask(name) is JsonObject ? [Section(name)!] : Sections(name);

    /// <summary>The values under the names that are wanted, as they stand and without remarks.</summary>
    internal JsonObject Copy(Func<string, bool> isWanted)
    {
        var copy = new JsonObject();
        foreach (var (name, value) in node.Where(pair => isWanted(pair.Key) && !IsRemark(pair.Key)))
        {
            asked.Add(name);
            copy[name] = WithoutRemarks(value);
        }

        return copy;

        static JsonNode? WithoutRemarks(JsonNode? value) => value switch
        {
            JsonObject inner =>
                new JsonObject(inner.Where(pair => !IsRemark(pair.Key))
                    .Select(pair => KeyValuePair.Create(pair.Key, WithoutRemarks(pair.Value)))),
            JsonArray list => new JsonArray([.. list.Select(WithoutRemarks)]),
            _ => value?.DeepClone(),
        };
    }

    /// <summary>What <paramref name="make"/> returns; what it throws about its arguments becomes a fault at this name.</summary>
    public T? Make<T>(string name, Func<T> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        try
        {
            return make();
        }
        catch (ArgumentException error)
        {
            Refuse(name, FaultText.Of(error), null, Ask(name) is { } value ? Show(value) : null);
            return default;
        }
    }

    /// <summary>Adds a fault about the value under a name.</summary>
    public void Refuse(string name, string problem, string? accepted, string? value = null, string? suggestion = null) =>
        faults.Add(new Fault(File, problem) { Column = Path(name), Value = value, Accepted = accepted, Suggestion = suggestion });

    /// <summary>Adds a fault that a value is missing.</summary>
    public void Missing(string name, string accepted) => Refuse(name, "The value is missing.", accepted);

    /// <summary>Adds a fault for each name that nothing asked for, here and in every section that was opened: most are misspelt.</summary>
    public void RefuseUnasked()
    {
        foreach (var name in Names.Where(name => !asked.Contains(name) && !IsRemark(name)))
        {
            var known = asked.Where(candidate => !node.ContainsKey(candidate));
            Refuse(name, "The name is not known here, so its value would be passed over.",
                string.Join(", ", asked.Order(StringComparer.Ordinal)), null, Nearest.Suggestion(name, known));
        }

        foreach (var child in children) child.RefuseUnasked();
    }

    private JsonSection Child(JsonObject inner, string at)
    {
        var child = children.Find(known => known.path == at);
        if (child is null)
        {
            child = new JsonSection(File, inner, at, faults);
            children.Add(child);
        }

        return child;
    }

    private JsonNode? Ask(string name)
    {
        asked.Add(name);
        return node[name];
    }

    private string Path(string name) => path.Length == 0 ? name : $"{path}.{name}";

    private static bool IsRemark(string name) => name.StartsWith("//", StringComparison.Ordinal);

    private static string Reason(JsonException error)
    {
        var tail = error.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        return tail < 0 ? error.Message : error.Message[..tail];
    }

    private static string Show(JsonNode value)
    {
        var text = value is JsonValue scalar && scalar.TryGetValue<string>(out var plain) ? plain : value.ToJsonString();
        return text.Length <= 60 ? text : text[..57] + "...";
    }
}
