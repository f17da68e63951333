using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>Takes messages to be sent, from any thread, and sends them in the order taken.</summary>
public interface IOutbox
{
    /// <summary>Takes one message.</summary>
    void Send(OutgoingMessage message);
}

/// <summary>A message to be sent.</summary>
/// <param name="Channel">The socket it leaves by.</param>
/// <param name="Route">Routing frames: the client's identities, or the topic on iopub.</param>
/// <param name="Header">Its header.</param>
/// <param name="ParentHeader">The exact bytes of the header of the request it belongs to; empty when it belongs to none.</param>
/// <param name="Content">Its content as JSON.</param>
public sealed record OutgoingMessage(
    JupyterChannel Channel,
    IReadOnlyList<byte[]> Route,
    MessageHeader Header,
    byte[] ParentHeader,
    byte[] Content);
