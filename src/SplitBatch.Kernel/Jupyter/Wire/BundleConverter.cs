using System.Text.Json;
using System.Text.Json.Serialization;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>Writes a bundle as the protocol wants it: JSON forms as JSON, all others as strings.</summary>
public sealed class BundleConverter : JsonConverter<MimeBundle>
{
    /// <inheritdoc/>
    public override MimeBundle Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        return new MimeBundle(document.RootElement.EnumerateObject().ToDictionary(
            p => p.Name,
            p => p.Value.ValueKind == JsonValueKind.String && !MimeBundle.IsJson(p.Name) ? p.Value.GetString()! : p.Value.GetRawText()));
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, MimeBundle value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        foreach (var (mimeType, form) in value.Forms)
        {
            writer.WritePropertyName(mimeType);
            if (MimeBundle.IsJson(mimeType) && IsValidJson(form))
            {
                writer.WriteRawValue(form, skipInputValidation: true);
            }
            else
            {
                writer.WriteStringValue(form);
            }
        }

        writer.WriteEndObject();
    }

    private static bool IsValidJson(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
