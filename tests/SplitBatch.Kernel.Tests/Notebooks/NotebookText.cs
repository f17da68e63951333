using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>Notebooks for tests, made in a line.</summary>
internal static class NotebookText
{
    public static string Tiny => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Notebooks", "Fixtures", "tiny.ipynb"));

    public static string Of(params JsonObject[] cells) => new JsonObject
    {
        ["cells"] = new JsonArray([.. cells]),
        ["metadata"] =
            new JsonObject { ["kernelspec"] = new JsonObject { ["display_name"] = "C#", ["language"] = "C#", ["name"] = "splitbatch" } },
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    }.ToJsonString();

    public static JsonObject Code(string source, params string[] tags) => new()
    {
        ["cell_type"] = "code",
        ["execution_count"] = null,
        ["id"] = "c" + source.Length,
        ["metadata"] = new JsonObject { ["tags"] = new JsonArray([.. tags.Select(t => (JsonNode)t)]) },
        ["outputs"] = new JsonArray(),
        ["source"] = source,
    };

    public static JsonObject Markdown(string source) => new()
    {
        ["cell_type"] = "markdown",
        ["id"] = "m" + source.Length,
        ["metadata"] = new JsonObject(),
        ["source"] = source,
    };

    public static JsonArray OutputsOf(Notebook notebook, int cell) =>
        JsonNode.Parse(notebook.ToString())!["cells"]![cell - 1]!["outputs"]!.AsArray();
}
