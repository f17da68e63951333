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

/// <summary>
/// Answers that the running cell is being stopped. That was begun when the request came: done here, it could strike the next cell.
/// </summary>
public sealed class InterruptHandler : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "interrupt_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        exchange.Reply(new InterruptReply(), WireJson.Plain.InterruptReply);
        return Task.CompletedTask;
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

/// <summary>Refuses to debug, so that a client need not wait: there is no debugger.</summary>
public sealed class DebugHandler : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "debug_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var request = exchange.Content(WireJson.Plain.DebugRequest);
        exchange.Reply(new DebugReply(request.Seq, request.Command, "This kernel has no debugger."), WireJson.Plain.DebugReply);
        return Task.CompletedTask;
    }
}
