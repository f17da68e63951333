using System.Text;

namespace SplitBatch.Display.Drawing;

/// <summary>Makes any text safe inside XML and HTML, as content or as a quoted attribute.</summary>
internal static class Xml
{
    /// <summary>The text with the five marked characters escaped and characters that XML forbids replaced.</summary>
    public static string Text(string text)
    {
        var safe = new StringBuilder(text.Length + 16);
        foreach (var c in Clean(text))
        {
            _ = c switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                _ => safe.Append(c),
            };
        }

        return safe.ToString();
    }

    /// <summary>The text with a mark in place of characters that XML forbids and of those that turn the text around them.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes()) // a lone surrogate comes out as U+FFFD
        {
            _ = rune.Value switch
            {
                '\t' or '\n' or '\r' => clean.Append((char)rune.Value),
                < 0x20 or 0x7F or 0xFFFE or 0xFFFF or (>= 0x80 and <= 0x9F) => clean.Append('\uFFFD'),
                (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => clean.Append('\uFFFD'),
                _ => clean.Append(rune.ToString()),
            };
        }

        return clean.ToString();
    }
}
