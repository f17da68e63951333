using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Stops the running cell; what earlier cells made stays.</summary>
public sealed class InterruptHandler(ICellHost host, Action stopRequest) : IRequestHandler
{
    private const string Stuck =
        "The cell is in a call that cannot be stopped from outside. It goes on until the call returns; to end it now, restart the kernel.\n";

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
