namespace SplitBatch.Kernel.Host;

/// <summary>One kernel for a class of tests, and short ways to run cells in it.</summary>
public sealed class HostFixture : IAsyncLifetime
{
    public KernelHost Host { get; private set; } = null!;

    public async Task InitializeAsync() => Host = await KernelHost.StartAsync();

    public async Task DisposeAsync() => await Host.DisposeAsync();

    public async Task<(CellResult Result, List<CellOutput> Outputs)> Run(string code, ExecuteOptions? options = null, CancellationToken cancellation = default)
    {
        var outputs = new List<CellOutput>();
        var result = await Host.ExecuteAsync(code, outputs.Add, options, cancellation);
        return (result, outputs);
    }

    public async Task<string> Value(string code)
    {
        var (result, outputs) = await Run(code);
        Assert.True(result.Status == CellStatus.Ok, result.Error?.ToString());
        return Assert.Single(outputs.OfType<ResultOutput>()).Data["text/plain"]!;
    }
}
