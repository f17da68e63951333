using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Tells what is at the cursor.</summary>
public sealed class InspectHandler(ICellHost host) : IRequestHandler
{
    private static readonly MimeBundle Nothing = new(new Dictionary<string, string>());

    /// <inheritdoc/>
    public string MessageType => "inspect_request";

    /// <inheritdoc/>
    public async Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var request = exchange.Content(WireJson.Plain.InspectRequest);
        var cursor = CodePoints.ToUtf16(request.Code, request.CursorPos ?? int.MaxValue);
        var found = await host.InspectAsync(request.Code, cursor, cancellation).ConfigureAwait(false);
        exchange.Reply(new InspectReply(found is not null, found ?? Nothing), WireJson.Plain.InspectReply);
    }
}
