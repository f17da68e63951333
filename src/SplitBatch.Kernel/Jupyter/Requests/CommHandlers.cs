using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Answers that there are no comms.</summary>
public sealed class CommInfoHandler : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "comm_info_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        exchange.Reply(new CommInfoReply(), WireJson.Plain.CommInfoReply);
        return Task.CompletedTask;
    }
}

/// <summary>Closes a comm that a client opens: no target is known here, and the client should not wait for one.</summary>
public sealed class CommOpenHandler : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "comm_open";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var opened = exchange.Content(WireJson.Plain.CommOpenContent);
        exchange.Publish("comm_close", new CommCloseContent(opened.CommId), WireJson.Plain.CommCloseContent);
        return Task.CompletedTask;
    }
}

/// <summary>Takes messages on a comm that is already closed, and closings, without a word.</summary>
public sealed class CommIgnoredHandler(string messageType) : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => messageType;

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation) => Task.CompletedTask;
}
