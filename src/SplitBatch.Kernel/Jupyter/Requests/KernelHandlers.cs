using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Says what this kernel is. Needs no host, so that a client is answered while the compiler still warms up.</summary>
public sealed class KernelInfoHandler : IRequestHandler
{
    private static readonly string Version = typeof(KernelInfoHandler).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    private static readonly KernelInfoReply Info = new(
        JupyterSession.ProtocolVersion,
        "splitbatch",
        Version,
        new LanguageInfo("C#", "14.0", "text/x-csharp", ".cs", "csharp", "text/x-csharp"),
        $"SplitBatch {Version}, C# on .NET {Environment.Version}. The library is loaded: try Trial.Open(\"folder\").",
        []);

    /// <inheritdoc/>
    public string MessageType => "kernel_info_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        exchange.Reply(Info, WireJson.Plain.KernelInfoReply);
        return Task.CompletedTask;
    }
}

/// <summary>Stops the running cell; what earlier cells made stays.</summary>
public sealed class InterruptHandler(ICellHost host, Action stopRequest) : IRequestHandler
{
    private const string Stuck =
        "The cell is in a call that cannot be stopped from outside. It goes on until the call returns; to end it now, restart the "
            + "kernel.\n";

    /// <inheritdoc/>
    public string MessageType => "interrupt_request";

    /// <inheritdoc/>
    public async Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        stopRequest();
        var stopped = await host.InterruptAsync().ConfigureAwait(false);
        if (!stopped)
        {
            exchange.Publish("stream", new StreamText("stderr", Stuck), WireJson.Plain.StreamText);
        }

        exchange.Reply(new InterruptReply(), WireJson.Plain.InterruptReply);
    }
}

/// <summary>Answers that the kernel ends, then ends it. A restart is the same here: the client starts a new process.</summary>
public sealed class ShutdownHandler(Action stop) : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "shutdown_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var restart = exchange.Content(WireJson.Plain.ShutdownContent).Restart;
        exchange.Reply(new ShutdownReply(restart), WireJson.Plain.ShutdownReply);
        exchange.Publish("shutdown_reply", new ShutdownReply(restart), WireJson.Plain.ShutdownReply);
        stop();
        return Task.CompletedTask;
    }
}
