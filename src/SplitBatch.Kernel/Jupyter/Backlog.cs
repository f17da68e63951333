using System.Runtime.CompilerServices;
using System.Threading.Channels;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>Requests that wait to be served, in the order they came.</summary>
public sealed class Backlog
{
    private readonly Channel<Waiting> _queue = Channel.CreateUnbounded<Waiting>(new UnboundedChannelOptions { SingleReader = true });
    private long _received;
    private long _dropped;

    /// <summary>Adds a request.</summary>
    public void Add(JupyterMessage message) => _queue.Writer.TryWrite(new Waiting(message, Interlocked.Increment(ref _received)));

    /// <summary>Marks every cell that waits at this moment as not to be run.</summary>
    public void DropWaitingCells() => Volatile.Write(ref _dropped, Volatile.Read(ref _received));

    /// <summary>No more will be added.</summary>
    public void Close() => _queue.Writer.TryComplete();

    /// <summary>The requests, as they come; each with whether it is a cell that shall not be run.</summary>
    public async IAsyncEnumerable<(JupyterMessage Message, bool Dropped)> ReadAsync(
        [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var waiting in _queue.Reader.ReadAllAsync(cancellation).ConfigureAwait(false))
        {
            var isCell = waiting.Message.Header.MsgType == "execute_request";
            yield return (waiting.Message, isCell && waiting.Number <= Volatile.Read(ref _dropped));
        }
    }

    private sealed record Waiting(JupyterMessage Message, long Number);
}
