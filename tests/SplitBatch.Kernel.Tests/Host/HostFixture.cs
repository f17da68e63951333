using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

/// <summary>One kernel for a class of tests, and short ways to run cells in it.</summary>
public sealed class HostFixture : IAsyncLifetime
{
    public KernelHost Host { get; } = new();

    public Task InitializeAsync() => Host.StartAsync();

    public async Task DisposeAsync() => await Host.DisposeAsync();

    public async Task<(CellResult Result, List<CellOutput> Outputs)> Run(string code, TimeSpan? limit = null)
    {
        using var stop = new CancellationTokenSource();
        if (limit is { } time) stop.CancelAfter(time);
        var sink = new ListSink();
        var result = await Host.ExecuteAsync(code, sink, stop.Token);
        return (result, sink.Outputs);
    }

    public async Task<string> Value(string code)
    {
        var (result, outputs) = await Run(code);
        Assert.True(result.Succeeded, result.Error?.ToString());
        return Text(Assert.Single(outputs.OfType<ValueOutput>()));
    }

    public static string Text(CellOutput output) => output switch
    {
        ValueOutput value => value.Data.Forms["text/plain"],
        DisplayOutput shown => shown.Data.Forms["text/plain"],
        DisplayUpdate update => update.Data.Forms["text/plain"],
        TextOutput text => text.Text,
        _ => "",
    };
}

/// <summary>Keeps outputs in a list, and answers questions if it is given an answer.</summary>
public sealed class ListSink(string? answer = null) : ICellSink
{
    public List<CellOutput> Outputs { get; } = [];

    public List<(string Prompt, bool Password)> Asked { get; } = [];

    public Action<CellOutput>? OnPublish { get; init; }

    public void Publish(CellOutput output)
    {
        Outputs.Add(output);
        OnPublish?.Invoke(output);
    }

    public Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation)
    {
        Asked.Add((prompt, password));
        return answer is null ? throw new InvalidOperationException("Nobody is there to answer.") : Task.FromResult(answer);
    }
}
