using System.Text.Json.Nodes;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli.Notebooks;

/// <summary>All curated notebooks, run once on the example that they open on, as the README's command does.</summary>
public sealed class ExecutedNotebooks : IAsyncLifetime, IDisposable
{
    private readonly DirectoryInfo output = Directory.CreateTempSubdirectory("run-");

    public string Output => output.FullName;

    public IReadOnlyList<NotebookOutcome> Outcomes { get; private set; } = [];

    public async Task InitializeAsync() =>
        Outcomes = await BatchRunner.RunAsync(
            new BatchRequest([Repository.Path("notebooks")], Output) { CellLimit = TimeSpan.FromMinutes(5) });

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => output.Delete(recursive: true);

    /// <summary>What the code cells of a notebook put out, as plain text, in order.</summary>
    public IReadOnlyList<string> Texts(string notebook) =>
        [.. Outputs(notebook).Select(output => Join(output["data"]?["text/plain"] ?? output["text"]))];

    /// <summary>The pages of a notebook's outputs, in order.</summary>
    public IReadOnlyList<string> Pages(string notebook) => [.. Outputs(notebook).Select(output => Join(output["data"]?["text/html"]))];

    public IReadOnlyList<JsonNode> Outputs(string notebook)
    {
        var json = JsonNode.Parse(File.ReadAllText(Path.Combine(Output, notebook + ".ipynb")))!;
        return [.. json["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code")
            .SelectMany(cell => cell!["outputs"]!.AsArray()).Select(output => output!)];
    }

    private static string Join(JsonNode? text) => text switch
    {
        JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
        null => "",
        _ => (string?)text ?? "",
    };
}
