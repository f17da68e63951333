using System.Text;

namespace SplitBatch.Display.Drawing;

/// <summary>Makes any text safe inside XML and HTML, as content or as a quoted attribute.</summary>
internal static class Xml
{
    /// <summary>The text with the five marked characters escaped and characters that XML forbids replaced.</summary>
    public static string Text(string text)
    {
        var safe = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                '\t' or '\n' or '\r' => safe.Append((char)rune.Value),
                < 0x20 or 0x7F or 0xFFFE or 0xFFFF or (>= 0x80 and <= 0x9F) => safe.Append('\uFFFD'),
                (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => safe.Append('\uFFFD'), // text that turns its neighbours around
                _ => safe.Append(rune.ToString()),
            };
        }

        return safe.ToString();
    }
}
