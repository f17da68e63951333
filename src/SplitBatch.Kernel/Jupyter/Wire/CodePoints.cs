namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>
/// The protocol counts positions in Unicode code points, .NET in UTF-16 code units. They differ after any character outside the
/// basic plane, such as an emoji. Positions outside the text are moved to its nearest end.
/// </summary>
public static class CodePoints
{
    /// <summary>The UTF-16 position of a code point position.</summary>
    public static int ToUtf16(string text, int codePoints)
    {
        var position = 0;
        for (var seen = 0; seen < codePoints && position < text.Length; seen++)
        {
            position += IsPair(text, position) ? 2 : 1;
        }

        return position;
    }

    /// <summary>The code point position of a UTF-16 position.</summary>
    public static int FromUtf16(string text, int utf16)
    {
        var count = 0;
        for (var position = 0; position < Math.Min(utf16, text.Length); count++)
        {
            position += IsPair(text, position) ? 2 : 1;
        }

        return count;
    }

    private static bool IsPair(string text, int position) =>
        char.IsHighSurrogate(text[position]) && position + 1 < text.Length && char.IsLowSurrogate(text[position + 1]);
}
