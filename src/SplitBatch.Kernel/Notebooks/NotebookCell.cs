using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>The kinds of cell.</summary>
public enum CellKind
{
    /// <summary>Code to run.</summary>
    Code,

    /// <summary>Prose in Markdown.</summary>
    Markdown,

    /// <summary>Text for another program, left as it is.</summary>
    Raw,
}

/// <summary>One cell of a <see cref="Notebook"/>, seen through its JSON.</summary>
public sealed class NotebookCell
{
    private readonly JsonObject json;

    internal NotebookCell(JsonObject json, int number)
    {
        this.json = json;
        Number = number;
    }

    /// <summary>The cell's place in the file as it was read, counting every kind from 1.</summary>
    public int Number { get; }

    /// <summary>Code, prose or raw text.</summary>
    public CellKind Kind =>
        (string?)json["cell_type"] switch { "code" => CellKind.Code, "markdown" => CellKind.Markdown, _ => CellKind.Raw };

    /// <summary>The cell's id; null in notebooks before format 4.5.</summary>
    public string? Id => json["id"] is JsonValue value && value.TryGetValue<string>(out var id) ? id : null;

    /// <summary>The text, with <c>\n</c> as it stands in the file.</summary>
    public string Source
    {
        get => MultilineText.Join(json["source"]);
        internal set => json["source"] = MultilineText.Split(value);
    }

    /// <summary>The tags in the cell's metadata.</summary>
    public IReadOnlyList<string> Tags =>
        (json["metadata"] as JsonObject)?["tags"] is JsonArray tags ? [.. tags.OfType<JsonValue>().Select(t => t.ToString())] : [];

    /// <summary>The language of this one cell where a notebook mixes several; null when it does not say.</summary>
    public string? Language =>
        Named("polyglot_notebook", "kernelName") ?? Named("dotnet_interactive", "language") ?? Named("vscode", "languageId");

    /// <summary>The first line that is not blank, cut to 70 characters.</summary>
    public string FirstLine
    {
        get
        {
            var line = Source.Split('\n').Select(l => l.Trim()).FirstOrDefault(l => l.Length > 0) ?? "";
            return line.Length <= 70 ? line : line[..69] + "…";
        }
    }

    /// <summary>The number of the cell's run; null when it was not run.</summary>
    public int? ExecutionCount
    {
        get => json["execution_count"] is JsonValue value && value.TryGetValue<int>(out var count) ? count : null;
        internal set => json["execution_count"] = value is { } count ? JsonValue.Create(count) : null;
    }

    /// <summary>The Markdown cell's attached pictures: name to MIME type and base64.</summary>
    internal JsonObject? Attachments => json["attachments"] as JsonObject;

    /// <summary>The outputs, in the notebook format; empty for cells that are not code.</summary>
    internal JsonArray Outputs => json["outputs"] as JsonArray ?? [];

    /// <summary>Takes all outputs away and answers the list that new ones go into.</summary>
    internal JsonArray ClearOutputs()
    {
        var outputs = new JsonArray();
        json["outputs"] = outputs;
        ExecutionCount = null;
        return outputs;
    }

    private string? Named(string section, string name) =>
        (json["metadata"] as JsonObject)?[section] is JsonObject part && part[name] is JsonValue value
            && value.TryGetValue<string>(out var text) ? text : null;
}
