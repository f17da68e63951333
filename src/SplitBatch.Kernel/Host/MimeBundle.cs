namespace SplitBatch.Kernel.Host;

/// <summary>
/// One value in several forms, keyed by MIME type. Text forms are held as they are, binary ones (<c>image/png</c>) as base64 text,
/// and JSON ones (<c>application/json</c> and any type ending in <c>+json</c>) as JSON text.
/// </summary>
public sealed record MimeBundle
{
    /// <summary>Makes a bundle from forms keyed by MIME type.</summary>
    public MimeBundle(IReadOnlyDictionary<string, string> forms) => Forms = forms;

    /// <summary>The forms, keyed by MIME type.</summary>
    public IReadOnlyDictionary<string, string> Forms { get; }

    /// <summary>A bundle with plain text alone.</summary>
    public static MimeBundle Plain(string text) => new(new Dictionary<string, string> { ["text/plain"] = text });

    /// <summary>Whether the MIME type's form is JSON text.</summary>
    public static bool IsJson(string mimeType) =>
        mimeType == "application/json" || mimeType.EndsWith("+json", StringComparison.Ordinal);
}
