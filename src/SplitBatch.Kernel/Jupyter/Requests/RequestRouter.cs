using System.Text.Json;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>
/// Finds the handler of each request and frames its work with busy and idle. A request that fails, or that nobody serves, never ends
/// the kernel.
/// </summary>
public sealed class RequestRouter(JupyterSession session, IEnumerable<IRequestHandler> handlers, KernelLog log)
{
    private readonly Dictionary<string, IRequestHandler> _handlers = handlers.ToDictionary(h => h.MessageType);

    /// <summary>Serves one request, to its end.</summary>
    public async Task HandleAsync(JupyterChannel channel, JupyterMessage message, CancellationToken cancellation)
    {
        var exchange = new Exchange(session, channel, message);
        exchange.Status("busy");
        try
        {
            if (_handlers.TryGetValue(message.Header.MsgType, out var handler))
            {
                await handler.HandleAsync(exchange, cancellation).ConfigureAwait(false);
            }
            else
            {
                log.Write($"a message of unknown type '{message.Header.MsgType}' was left unanswered");
            }
        }
        catch (Exception e) when (e is not OperationCanceledException || !cancellation.IsCancellationRequested)
        {
            log.Write($"{message.Header.MsgType} failed: {e}");
            exchange.Reply(Fault(e), WireJson.Plain.ReplyError);
        }
        finally
        {
            exchange.Status("idle");
        }
    }

    private static ReplyError Fault(Exception e) => new(
        e.GetType().Name,
        e is JsonException ? "The content of the message could not be read: " + e.Message : e.Message,
        [e.Message]);
}

/// <summary>Serves one type of request. The router sends busy before and idle after.</summary>
public interface IRequestHandler
{
    /// <summary>The message type served.</summary>
    string MessageType { get; }

    /// <summary>Serves one request.</summary>
    Task HandleAsync(Exchange exchange, CancellationToken cancellation);
}
