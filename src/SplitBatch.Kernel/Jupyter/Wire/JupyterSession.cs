using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>One life of a kernel: its session id, the headers of what it sends, and the outbox everything leaves by.</summary>
public sealed class JupyterSession(IOutbox outbox)
{
    /// <summary>The version of the messaging protocol spoken here.</summary>
    public const string ProtocolVersion = "5.3";

    private long _sent;

    /// <summary>Unique to this life.</summary>
    public string Id { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Sends a message to one client.</summary>
    public void Send<T>(JupyterChannel channel, JupyterMessage request, string type, T content, JsonTypeInfo<T> form) =>
        outbox.Send(
            new OutgoingMessage(channel, request.Identities, NewHeader(type), request.HeaderJson,
            JsonSerializer.SerializeToUtf8Bytes(content, form)));

    /// <summary>Sends a message to every client, as belonging to a request, or to none.</summary>
    public void Publish<T>(JupyterMessage? request, string type, T content, JsonTypeInfo<T> form) =>
        outbox.Send(new OutgoingMessage(
            JupyterChannel.IOPub,
            [Encoding.UTF8.GetBytes($"kernel.{Id}.{type}")],
            NewHeader(type),
            request?.HeaderJson ?? [],
            JsonSerializer.SerializeToUtf8Bytes(content, form)));

    private MessageHeader NewHeader(string type) => new(
        string.Create(CultureInfo.InvariantCulture, $"{Id}_{Interlocked.Increment(ref _sent)}"),
        Id,
        "kernel",
        DateTimeOffset.UtcNow.ToString("yyyy-MM-ddTHH:mm:ss.ffffffZ", CultureInfo.InvariantCulture),
        type,
        ProtocolVersion);
}
