using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>A folder below the system's temporary one with notebooks and a trial, for one test.</summary>
public sealed class BatchFolder : IDisposable
{
    public BatchFolder()
    {
        Root = Directory.CreateTempSubdirectory("batch-").FullName;
        Directory.CreateDirectory(At("notebooks"));
        Directory.CreateDirectory(At("trials", "amber"));
        File.WriteAllText(At("trials", "amber", "trial.json"), "{}");
    }

    public string Root { get; }

    public string Output => At("out");

    public string At(params string[] parts) => Path.Combine([Root, .. parts]);

    public void Add(string name, params System.Text.Json.Nodes.JsonObject[] cells) =>
        File.WriteAllText(At("notebooks", name), NotebookText.Of(cells));

    public Task<IReadOnlyList<NotebookOutcome>> Run(BatchRequest? request = null, ICellHost? host = null,
        Action<BatchProgress>? progress = null) =>
        BatchRunner.RunAsync(request ?? new BatchRequest([At("notebooks")], Output), progress, () => host ?? new EchoHost());

    public Notebook Executed(string name) => Notebook.Load(At("out", name));

    public void Dispose() => Directory.Delete(Root, recursive: true);
}

/// <summary>Prints each cell's text; a cell that says "fail" fails.</summary>
public sealed class EchoHost : ICellHost
{
    public Action<string>? OnCell { get; init; }

    public Task StartAsync(CancellationToken cancellation = default) => Task.CompletedTask;

    public Task<CellResult> ExecuteAsync(string code, ICellSink sink, CancellationToken cancellation = default)
    {
        OnCell?.Invoke(code);
        var text = code.Replace("{cwd}", Directory.GetCurrentDirectory(), StringComparison.Ordinal);
        sink.Publish(new TextOutput(text));
        return Task.FromResult(code.Contains("fail", StringComparison.Ordinal)
            ? new CellResult(new CellError("Error", $"wrong in {Directory.GetCurrentDirectory()}", ["Error: wrong"]))
            : CellResult.Success);
    }

    public Task<Completions> CompleteAsync(string code, int cursor, CancellationToken cancellation = default) =>
        throw new NotSupportedException();

    public Task<MimeBundle?> InspectAsync(string code, int cursor, CancellationToken cancellation = default) =>
        throw new NotSupportedException();

    public Completeness IsComplete(string code) => Completeness.Complete;

    public Task<bool> InterruptAsync() => Task.FromResult(true);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
