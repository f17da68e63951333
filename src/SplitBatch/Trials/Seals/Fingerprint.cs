using System.Security.Cryptography;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// The SHA-256 of a file's bytes. Whoever holds it can tell later whether the file is still the same; <c>sha256sum FILE</c> prints it
/// on any machine.
/// </summary>
/// <remarks>
/// The whole of it is what to publish. The short form, its first twenty digits, is for reading aloud and for paper: nobody can make a
/// second file to a short form that is out already, but whoever prepares two files beforehand, with much computing, could give both
/// one short form.
/// </remarks>
/// <seealso href="https://doi.org/10.6028/NIST.FIPS.180-4">FIPS 180-4, Secure Hash Standard</seealso>
public sealed record Fingerprint
{
    private const int ShortDigits = 20, AllDigits = 64;

    private Fingerprint(string digits) => Digits = digits;

    /// <summary>All 64 hexadecimal digits, in lower case.</summary>
    public string Digits { get; }

    /// <summary>The first twenty digits in groups of four, to be read aloud: <c>3f9a 0c2b 77d1 e4a0 9b3c</c>.</summary>
    public string Spoken => string.Join(' ', Digits[..ShortDigits].Chunk(4).Select(group => new string(group)));

    /// <summary>The fingerprint of a file's bytes.</summary>
    public static Fingerprint Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    /// <summary>All 64 digits as somebody wrote them; null where the text is none.</summary>
    public static Fingerprint? Parse(string? text) => Plain(text) is { Length: AllDigits } digits ? new(digits) : null;

    /// <summary>
    /// Whether somebody's note of a fingerprint, whole or its first twenty digits or more, is this one. Spaces and hyphens do not matter.
    /// </summary>
    /// <exception cref="ArgumentException">The text is no fingerprint: it holds other signs, or fewer than twenty digits.</exception>
    public bool Matches(string text) => Plain(text) is { Length: >= ShortDigits and <= AllDigits } digits
        ? Digits.StartsWith(digits, StringComparison.Ordinal)
        : throw new ArgumentException(Refusal(text), nameof(text));

    /// <summary>Why somebody's note is no fingerprint, whole or in its first twenty digits; null where it is one.</summary>
    public static string? Refusal(string text) => Plain(text) is { Length: >= ShortDigits and <= AllDigits } ? null
        : $"\"{text}\" is no fingerprint. Accepted: the first twenty digits or more, of 0-9 and a-f, as 3f9a 0c2b 77d1 e4a0 9b3c.";

    /// <summary>The short form.</summary>
    public override string ToString() => Spoken;

    private static string? Plain(string? text)
    {
        var digits = string.Concat((text ?? "").Where(letter => !char.IsWhiteSpace(letter) && letter != '-')).ToLowerInvariant();
        return digits.All(char.IsAsciiHexDigitLower) ? digits : null;
    }
}
