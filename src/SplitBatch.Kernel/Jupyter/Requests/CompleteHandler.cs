using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Says what could stand at the cursor.</summary>
public sealed class CompleteHandler(ICellHost host) : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "complete_request";

    /// <inheritdoc/>
    public async Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var request = exchange.Content(WireJson.Plain.CompleteRequest);
        var cursor = CodePoints.ToUtf16(request.Code, request.CursorPos ?? int.MaxValue);
        var found = await host.CompleteAsync(request.Code, cursor, cancellation).ConfigureAwait(false);
        var start = CodePoints.FromUtf16(request.Code, found.Start);
        var end = CodePoints.FromUtf16(request.Code, found.End);
        exchange.Reply(
            new CompleteReply(
                [.. found.Items.Select(i => i.Text)],
                start,
                end,
                new CompleteMetadata([.. found.Items.Select(i => new CompleteType(i.Text, i.Kind, start, end))])),
            WireJson.Plain.CompleteReply);
    }
}
