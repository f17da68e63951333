using System.Text.Json;
using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// One value in several forms, keyed by MIME type. Text forms are held as they are, binary ones (<c>image/png</c>) as base64 text,
/// and JSON ones (<c>application/json</c> and any type ending in <c>+json</c>) as JSON text.
/// </summary>
public sealed record MimeBundle
{
    /// <summary>
    /// Makes a bundle from forms keyed by MIME type. A cell may call anything JSON: a form that is not is kept as a JSON string.
    /// </summary>
    public MimeBundle(IReadOnlyDictionary<string, string> forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        Forms = forms.All(form => !IsJson(form.Key) || IsValid(form.Value))
            ? forms
            : forms.ToDictionary(form => form.Key, form =>
                IsJson(form.Key) && !IsValid(form.Value) ? JsonSerializer.Serialize(form.Value) : form.Value);
    }

    /// <summary>The forms, keyed by MIME type.</summary>
    public IReadOnlyDictionary<string, string> Forms { get; }

    /// <summary>A bundle with plain text alone.</summary>
    public static MimeBundle Plain(string text) => new(new Dictionary<string, string> { ["text/plain"] = text });

    /// <summary>Whether the MIME type's form is JSON text.</summary>
    public static bool IsJson(string mimeType) =>
        mimeType == "application/json" || mimeType.EndsWith("+json", StringComparison.Ordinal);

    private static bool IsValid(string json)
    {
        try
        {
            JsonNode.Parse(json);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
