using System.Text.Json.Serialization;

namespace SplitBatch.Kernel.Jupyter.Wire;

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
