using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

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
