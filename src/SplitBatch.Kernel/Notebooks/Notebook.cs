using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>
/// A notebook file in format 4 (<c>.ipynb</c>). It is edited as JSON, so that whatever is not touched (ids, metadata,
/// attachments, raw cells, fields of other programs) is written as it was read.
/// </summary>
public sealed class Notebook
{
    /// <summary>The largest file that is read.</summary>
    public const long LargestFile = 256_000_000;

    private static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly JsonObject root;
    private readonly JsonArray cellArray;
    private readonly List<NotebookCell> cells;

    private Notebook(JsonObject root, JsonArray cellArray)
    {
        this.root = root;
        this.cellArray = cellArray;
        cells = [.. cellArray.Select((node, i) => new NotebookCell(node!.AsObject(), i + 1))];
    }

    /// <summary>The cells in order.</summary>
    public IReadOnlyList<NotebookCell> Cells => cells;

    /// <summary>The language that the notebook says it is written in, in small letters; null when it does not say.</summary>
    public string? Language =>
        (Text(root["metadata"], "kernelspec", "language") ?? Text(root["metadata"], "language_info", "name"))?.ToLowerInvariant();

    /// <summary>The first heading of the prose; null when there is none.</summary>
    public string? Title => cells
        .Where(c => c.Kind == CellKind.Markdown)
        .SelectMany(c => c.Source.Split('\n'))
        .FirstOrDefault(line => line.StartsWith("# ", StringComparison.Ordinal))?[2..].Trim();

    private bool HasCellIds => (root["nbformat_minor"]?.GetValue<int>() ?? 0) >= 5;

    /// <summary>Reads a notebook file.</summary>
    /// <exception cref="NotebookException">The file cannot be read, or is not a notebook in format 4; the message says which and
    /// where.</exception>
    public static Notebook Load(string path)
    {
        try
        {
            var file = new FileInfo(path);
            if (file.Exists && file.Length > LargestFile)
            {
                throw new NotebookException(
                    $"The file has {Printed.Count(file.Length / 1_000_000)} MB, and at most {LargestFile / 1_000_000} MB are read. "
                        + $"Clear its "
                    + $"outputs in a notebook editor and save it again.");
            }

            return Parse(new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(File.ReadAllBytes(path)).TrimStart('\uFEFF'));
        }
        catch (DecoderFallbackException)
        {
            throw new NotebookException("The file is not UTF-8 text, so it is not a notebook.");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException(error is FileNotFoundException or DirectoryNotFoundException ? "There is no such file."
                : $"The file cannot be read: {error.GetType().Name}.", error);
        }
    }

    /// <summary>Reads a notebook from its text.</summary>
    /// <exception cref="NotebookException">It is not a notebook in format 4; the message says why and where.</exception>
    public static Notebook Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (string.IsNullOrWhiteSpace(json))
            throw new NotebookException(
                "The file is empty. A notebook is a JSON file with nbformat 4; an empty notebook can be made in any notebook editor.");
        try
        {
            var node = JsonNode.Parse(json, documentOptions: new JsonDocumentOptions { MaxDepth = 256, AllowDuplicateProperties = false });
            return node is JsonObject root ? Check(root)
                : throw new NotebookException(
                "The file is JSON, but not a notebook: it must be an object with nbformat, metadata and cells.");
        }
        catch (JsonException error)
        {
            throw new NotebookException(
                $"The file is not valid JSON at line {error.LineNumber + 1}, character {error.BytePositionInLine + 1}, so it is not a "
                + $"notebook. It may have been cut short, or hold marks of a merge conflict.", error);
        }
    }

    /// <summary>Writes the notebook as a file, all of it or nothing.</summary>
    public void Save(string path)
    {
        var draft = path + ".new";
        File.WriteAllText(draft, ToString());
        File.Move(draft, path, overwrite: true);
    }

    /// <summary>The notebook's text, indented by one space as notebook editors do, with a line end at the end.</summary>
    public override string ToString()
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Indented)) root.WriteTo(writer);
        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    /// <summary>Adds a code cell after another one, with one tag.</summary>
    internal NotebookCell InsertAfter(NotebookCell before, string source, string tag)
    {
        var at = cells.IndexOf(before) + 1;
        var json = new JsonObject { ["cell_type"] = "code", ["execution_count"] = null };
        if (HasCellIds) json["id"] = FreeId(tag);
        json["metadata"] = new JsonObject { ["tags"] = new JsonArray(tag) };
        json["outputs"] = new JsonArray();
        json["source"] = MultilineText.Split(source);
        cellArray.Insert(at, json);
        var cell = new NotebookCell(json, before.Number);
        cells.Insert(at, cell);
        return cell;
    }

    /// <summary>Takes a cell out.</summary>
    internal void Remove(NotebookCell cell)
    {
        cellArray.RemoveAt(cells.IndexOf(cell));
        cells.Remove(cell);
    }

    private static Notebook Check(JsonObject root)
    {
        if (Whole(root["nbformat"]) is not { } format)
            throw new NotebookException("The file has no nbformat number, so it is not a notebook.");
        if (format < 4)
            throw new NotebookException(
                $"The notebook is in the old format {format}; format 4 is read. Open it in a notebook editor and save it once, or run: "
                + $"jupyter nbconvert --to notebook --inplace.");
        if (format > 4)
            throw new NotebookException($"The notebook is in format {format}, which is newer than this program; format 4 is read.");
        if (root["nbformat_minor"] is { } minor && Whole(minor) is null)
            throw new NotebookException("The notebook's nbformat_minor is not a whole number.");
        if (root["metadata"] is not (null or JsonObject)) throw new NotebookException("The notebook's metadata is not an object.");
        if (root["cells"] is not JsonArray cells)
            throw new NotebookException(root["cells"] is null ? "The notebook has no cells: the list \"cells\" is missing."
                : "The notebook's \"cells\" is not a list.");
        for (var i = 0; i < cells.Count; i++) CheckCell(cells[i], i + 1);
        return new Notebook(root, cells);
    }

    private static void CheckCell(JsonNode? node, int number)
    {
        if (node is not JsonObject cell) throw new NotebookException($"Cell {number} is not an object.");
        if (cell["cell_type"] is not JsonValue kind || !kind.TryGetValue<string>(out var name)
            || name is not ("code" or "markdown" or "raw"))
        {
            throw new NotebookException(
                $"Cell {number} has the cell_type {cell["cell_type"]?.ToJsonString() ?? "(none)"}; accepted: \"code\", \"markdown\" or "
                + $"\"raw\".");
        }

        if (!MultilineText.IsText(cell["source"]))
            throw new NotebookException($"Cell {number} has no source, or one that is neither a text nor a list of texts.");
        if (cell["outputs"] is not (null or JsonArray)) throw new NotebookException($"Cell {number} has outputs that are not a list.");
        if (cell["metadata"] is not (null or JsonObject))
            throw new NotebookException($"Cell {number} has metadata that is not an object.");
    }

    private static int? Whole(JsonNode? node) => node is JsonValue value && value.TryGetValue<int>(out var whole) ? whole : null;

    private static string? Text(JsonNode? node, params ReadOnlySpan<string> path)
    {
        foreach (var name in path) node = (node as JsonObject)?[name];
        return node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
    }

    private string FreeId(string wish)
    {
        var taken = cells.Select(c => c.Id).ToHashSet();
        return Enumerable.Range(1, int.MaxValue).Select(i => i == 1 ? wish : $"{wish}-{i}").First(id => !taken.Contains(id));
    }
}

/// <summary>A notebook, or what was asked of it, cannot be used; the message is a sentence for the person who asked.</summary>
public sealed class NotebookException : Exception
{
    /// <inheritdoc/>
    public NotebookException()
    {
    }

    /// <inheritdoc/>
    public NotebookException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public NotebookException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
