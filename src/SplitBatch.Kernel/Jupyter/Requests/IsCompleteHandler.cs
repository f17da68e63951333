using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

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
