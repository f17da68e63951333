using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Pages;

/// <summary>One output of a cell as HTML, in the richest form a page can show.</summary>
internal static partial class OutputHtml
{
    public static void Add(StringBuilder page, JsonObject output, PageHead head)
    {
        switch (Word(output["output_type"]))
        {
            case "stream":
                var name = Word(output["name"]) == "stderr" ? "stderr" : "stdout";
                page.Append(CultureInfo.InvariantCulture, $"<pre class=\"{name}\">{Plain(MultilineText.Join(output["text"]))}</pre>\n");
                break;
            case "display_data" or "execute_result" when output["data"] is JsonObject data:
                page.Append(Rich(data, head)).Append('\n');
                break;
            case "error":
                var lines = output["traceback"] is JsonArray { Count: > 0 } traceback
                    ? string.Join('\n', traceback.Select(l => l?.ToString()))
                    : $"{output["ename"]}: {output["evalue"]}";
                page.Append(CultureInfo.InvariantCulture,
                    $"<div class=\"error\" id=\"stopped\" role=\"group\" aria-label=\"Error\"><pre>{Plain(lines)}</pre></div>\n");
                break;
        }
    }

    private static string Rich(JsonObject data, PageHead head)
    {
        if (Form(data, "text/html") is { } html) return head.Take(html);
        if (Form(data, "text/markdown") is { } markdown) return $"<div class=\"prose\">{Prose.Html(markdown)}</div>";
        var words = Form(data, "text/plain") ?? "";
        if (Form(data, "image/svg+xml") is { } svg)
            return Picture("image/svg+xml", Convert.ToBase64String(Encoding.UTF8.GetBytes(svg)), words);
        if (Form(data, "image/png") is { } png) return Picture("image/png", png, words);
        if (Form(data, "image/jpeg") is { } jpeg) return Picture("image/jpeg", jpeg, words);
        return $"<pre>{Plain(words)}</pre>";
    }

    private static string Picture(string type, string base64, string words) =>
        PageParts.Address(type, base64) is { } address
            ? $"<img src=\"{address}\" alt=\"{PageParts.Text(words)}\">"
            : $"<pre>{Plain(words)}</pre>";

    /// <summary>A text, or null for whatever else stands there: outputs may come from any program.</summary>
    private static string? Word(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : null;

    private static string? Form(JsonObject data, string type) =>
        data[type] is { } form && MultilineText.IsText(form) ? MultilineText.Join(form) : null;

    private static string Plain(string text) => PageParts.Text(Escapes().Replace(text, ""));

    [GeneratedRegex(@"\x1B\[[0-9;]*[A-Za-z]")]
    private static partial Regex Escapes();
}
