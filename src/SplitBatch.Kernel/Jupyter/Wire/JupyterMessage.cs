using System.Text.Json.Serialization;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>A message as received: checked, its header read, its content still JSON.</summary>
/// <param name="Identities">Routing frames, to be given back with the reply.</param>
/// <param name="Header">The header, read.</param>
/// <param name="HeaderJson">The header's exact bytes; a reply gives them back as its parent.</param>
/// <param name="Content">The content's JSON bytes.</param>
public sealed record JupyterMessage(
    IReadOnlyList<byte[]> Identities,
    MessageHeader Header,
    byte[] HeaderJson,
    byte[] Content);

/// <summary>The header of a Jupyter message.</summary>
/// <param name="MsgId">Unique to the message.</param>
/// <param name="Session">Unique to the sender's life.</param>
/// <param name="Username">Whoever sends.</param>
/// <param name="Date">When it was made, ISO 8601 with an offset.</param>
/// <param name="MsgType">What the content is.</param>
/// <param name="Version">Version of the messaging protocol.</param>
public sealed record MessageHeader(
    [property: JsonPropertyName("msg_id")] string MsgId,
    string Session,
    string? Username,
    string? Date,
    [property: JsonPropertyName("msg_type")] string MsgType,
    string? Version);

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

/// <summary>The sockets that carry messages; the heartbeat carries none.</summary>
public enum JupyterChannel
{
    /// <summary>Requests, served one after another.</summary>
    Shell,

    /// <summary>Requests that must not wait behind a running cell.</summary>
    Control,

    /// <summary>Questions to the user, and answers.</summary>
    Stdin,

    /// <summary>Everything put out, to every client.</summary>
    IOPub,
}
