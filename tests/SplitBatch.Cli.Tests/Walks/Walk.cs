using System.Text.Json.Nodes;
using Spectre.Console.Testing;
using SplitBatch.Trials;

namespace SplitBatch.Cli.Walks;

/// <summary>A brewer at the command line with a trial folder of her own: calls, files, and the pages that come out.</summary>
internal sealed class Walk : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("walk-");

    public string Folder => Path.Combine(root.FullName, "mine");

    public string Pages => Path.Combine(root.FullName, "mine-pages");

    public void Dispose() => root.Delete(recursive: true);

    /// <summary>One call of the command; what it said, and that it ended as it should.</summary>
    public static async Task<string> Call(int code, params string[] args)
    {
        var console = new TestConsole();
        console.Profile.Width = 1000;
        var ended = await SplitBatchApp.RunAsync(args, console);
        Assert.True(code == ended, $"{string.Join(' ', args)} ended with {ended}: {console.Output}");
        return console.Output;
    }

    /// <summary>Runs the folder's own notebooks; every one must end well.</summary>
    public Task<string> RunNotebooks() => Call(0, "run", Path.Combine(Folder, "notebooks"), "--out", Pages);

    /// <summary>What the code cells of an executed notebook put out, as plain text.</summary>
    public IReadOnlyList<string> Says(string notebook)
    {
        var json = JsonNode.Parse(File.ReadAllText(Path.Combine(Pages, notebook + ".ipynb")))!;
        return [.. json["cells"]!.AsArray().SelectMany(cell => cell!["outputs"]?.AsArray() ?? [])
            .Select(output => Join(output!["data"]?["text/plain"] ?? output["text"]))];
    }

    /// <summary>The notes of what is not there yet, each once, in all notebooks.</summary>
    public IReadOnlyList<string> NotYet() =>
    [
        .. Directory.GetFiles(Pages, "*.ipynb").Order(StringComparer.Ordinal)
            .SelectMany(path => Says(Path.GetFileNameWithoutExtension(path)))
            .Where(text => text.StartsWith("Not yet. ", StringComparison.Ordinal)).Distinct(),
    ];

    /// <summary>
    /// The ballots of a panel in which so many tasters pick the odd cup, and the others another: taster, session, set, answer, time.
    /// </summary>
    public string[][] Ballots(int right) =>
    [
        .. Trial.Open(Folder).Panel().Serving!.Sets.Select((set, index) => new[]
        {
            set.Taster, "1", $"{set.Number}", set.Cups.First(cup => (cup.Beer == set.Order.OddBeer) == index < right).Code,
            $"{DateTime.Today.AddDays(1):yyyy-MM-dd} 19:{index:00}",
        }),
    ];

    private static string Join(JsonNode? text) =>
        text is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)text ?? "";
}
