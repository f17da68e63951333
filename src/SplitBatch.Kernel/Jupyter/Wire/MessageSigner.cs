using System.Security.Cryptography;
using System.Text;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>
/// Signs the four JSON frames of a message with HMAC-SHA256, checks signatures in constant time, and knows those that came already. Used
/// by one thread at a time.
/// </summary>
public sealed class MessageSigner
{
    private const int Remembered = 65_536;

    private readonly byte[] _key;
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly Queue<string> _order = new();

    /// <summary>Makes a signer. An empty key means messages are not signed.</summary>
    public MessageSigner(string key) => _key = Encoding.UTF8.GetBytes(key);

    /// <summary>The signature frame: 64 lower-case hex digits in ASCII, or empty without a key.</summary>
    public byte[] Sign(ReadOnlySpan<byte> header, ReadOnlySpan<byte> parent, ReadOnlySpan<byte> metadata, ReadOnlySpan<byte> content)
    {
        if (_key.Length == 0)
        {
            return [];
        }

        using var hmac = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, _key);
        hmac.AppendData(header);
        hmac.AppendData(parent);
        hmac.AppendData(metadata);
        hmac.AppendData(content);
        return Encoding.ASCII.GetBytes(Convert.ToHexStringLower(hmac.GetHashAndReset()));
    }

    /// <summary>
    /// Whether a signature was not seen before, among the last 65,536. A message that comes again was recorded by somebody.
    /// </summary>
    public bool IsNew(ReadOnlySpan<byte> signature)
    {
        if (_key.Length == 0) return true;
        var text = Encoding.ASCII.GetString(signature);
        if (!_seen.Add(text)) return false;
        _order.Enqueue(text);
        if (_order.Count > Remembered) _seen.Remove(_order.Dequeue());
        return true;
    }

    /// <summary>Whether the signature frame belongs to these frames. Takes as long for a near miss as for a wild one.</summary>
    public bool Verify(ReadOnlySpan<byte> signature, ReadOnlySpan<byte> header, ReadOnlySpan<byte> parent, ReadOnlySpan<byte> metadata,
        ReadOnlySpan<byte> content) =>
        _key.Length == 0 || CryptographicOperations.FixedTimeEquals(signature, Sign(header, parent, metadata, content));
}
