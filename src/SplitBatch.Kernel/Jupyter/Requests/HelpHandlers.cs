using SplitBatch.Kernel.Cells;
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

/// <summary>Says whether a text is a whole cell, for clients that run a cell on Enter.</summary>
public sealed class IsCompleteHandler(ICellHost host) : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "is_complete_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var code = exchange.Content(WireJson.Plain.IsCompleteRequest).Code;
        var reply = host.IsComplete(code) switch
        {
            Completeness.Complete => new IsCompleteReply("complete", null),
            Completeness.Incomplete => new IsCompleteReply("incomplete", Indent(code)),
            _ => new IsCompleteReply("invalid", null),
        };
        exchange.Reply(reply, WireJson.Plain.IsCompleteReply);
        return Task.CompletedTask;
    }

    /// <summary>The last line's own indent, and four spaces more for each bracket it leaves open.</summary>
    private static string Indent(string code)
    {
        var line = code.TrimEnd('\n', '\r').Split('\n')[^1];
        var own = line.Length - line.TrimStart(' ').Length;
        var open = line.Count(c => c is '{' or '(' or '[') - line.Count(c => c is '}' or ')' or ']');
        return new string(' ', own + (4 * Math.Max(open, 0)));
    }
}
