using System.Text.Json;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>
/// Turns frames into messages and back. On the wire a message is: routing identities, a delimiter, the signature, then header,
/// parent header, metadata and content as JSON, then any buffers.
/// </summary>
public sealed class WireFormat(MessageSigner signer)
{
    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();
    private static readonly byte[] EmptyObject = "{}"u8.ToArray();

    /// <summary>Reads frames.</summary>
    /// <param name="frames">All frames of one multipart message.</param>
    /// <param name="message">The message, when the result is true.</param>
    /// <param name="fault">Why the frames were refused, when the result is false.</param>
    public bool TryRead(IReadOnlyList<byte[]> frames, out JupyterMessage message, out string fault)
    {
        message = null!;
        fault = "";
        var start = 0;
        while (start < frames.Count && !frames[start].AsSpan().SequenceEqual(Delimiter))
        {
            start++;
        }

        if (frames.Count < start + 6)
        {
            fault = start == frames.Count
                ? "no <IDS|MSG> delimiter"
                : $"{frames.Count - start - 1} frames after the delimiter, at least 5 are needed";
            return false;
        }

        var (header, parent, metadata, content) = (frames[start + 2], frames[start + 3], frames[start + 4], frames[start + 5]);
        if (!signer.Verify(frames[start + 1], header, parent, metadata, content))
        {
            fault = "the signature does not fit";
            return false;
        }

        try
        {
            var read = JsonSerializer.Deserialize(header, WireJson.Plain.MessageHeader);
            if (read is null || string.IsNullOrEmpty(read.MsgId) || string.IsNullOrEmpty(read.MsgType))
            {
                fault = "the header has no msg_id or no msg_type";
                return false;
            }

            if (!signer.IsNew(frames[start + 1]))
            {
                fault = "it was received before";
                return false;
            }

            message = new JupyterMessage([.. frames.Take(start)], read, header, content);
            return true;
        }
        catch (JsonException e)
        {
            fault = "the header is not JSON: " + e.Message;
            return false;
        }
    }

    /// <summary>Makes the frames of a message.</summary>
    /// <param name="identities">Routing frames: where to on shell, control and stdin; the topic on iopub.</param>
    /// <param name="header">The new message's header.</param>
    /// <param name="parentHeader">The exact bytes of the header of the request this belongs to, or empty.</param>
    /// <param name="content">The content as JSON.</param>
    public IReadOnlyList<byte[]> Write(IReadOnlyList<byte[]> identities, MessageHeader header, byte[] parentHeader, byte[] content)
    {
        var headerJson = JsonSerializer.SerializeToUtf8Bytes(header, WireJson.Plain.MessageHeader);
        var parent = parentHeader.Length == 0 ? EmptyObject : parentHeader;
        return [.. identities, Delimiter, signer.Sign(headerJson, parent, EmptyObject, content), headerJson, parent, EmptyObject, content];
    }
}
