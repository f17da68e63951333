using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>Makes the learner's or the instructor's notebook out of a workshop's source. The same source gives the same bytes.</summary>
internal static class WorkshopNotebook
{
    /// <summary>Stands in a source for the way up from the reader's folder to the workshop's own.</summary>
    private const string Up = "{up}";

    public static Notebook For(WorkshopSource source, Audience reader)
    {
        var ids = new HashSet<string>();
        var way = reader == Audience.Instructor ? "../" : "";
        var cells = source.Cells.Where(cell => cell.Audience == Audience.Everybody || cell.Audience == reader)
            .Select(cell => (JsonNode)Cell(cell with { Text = cell.Text.Replace(Up, way, StringComparison.Ordinal) }, ids));
        var root = new JsonObject
        {
            ["cells"] = new JsonArray([.. cells]),
            ["metadata"] = new JsonObject
            {
                ["kernelspec"] =
                    new JsonObject { ["display_name"] = "SplitBatch (C#)", ["language"] = "C#", ["name"] = ICellHost.KernelName },
                ["language_info"] =
                    new JsonObject { ["file_extension"] = ".cs", ["mimetype"] = "text/x-csharp", ["name"] = "C#",
                    ["pygments_lexer"] = "csharp" },
            },
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        };
        return Notebook.Parse(root.ToJsonString());
    }

    private static JsonObject Cell(SourceCell cell, HashSet<string> ids)
    {
        var json = new JsonObject { ["cell_type"] = cell.IsCode ? "code" : "markdown" };
        if (cell.IsCode) json["execution_count"] = null;
        json["id"] = Id(cell, ids);
        json["metadata"] = cell.Tag is { } tag ? new JsonObject { ["tags"] = new JsonArray(tag) } : new JsonObject();
        if (cell.IsCode) json["outputs"] = new JsonArray();
        json["source"] = MultilineText.Split(cell.Text);
        return json;
    }

    /// <summary>An id that stays while the cell's text does.</summary>
    private static string Id(SourceCell cell, HashSet<string> taken)
    {
        for (var copy = 0; ; copy++)
        {
            var id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{copy} {cell.Tag} {cell.Text}")))[..8];
            if (taken.Add(id)) return id;
        }
    }
}
