namespace SplitBatch.Trials.Logs;

/// <summary>How a log's text ends: whether its last row was written to the end.</summary>
/// <param name="Start">Where the last record starts, in characters, if the text does not end with a line end; else the text's length.</param>
/// <param name="Delimiters">Delimiters in that record, outside quotation marks.</param>
/// <param name="IsOpen">Whether a quotation mark is still open.</param>
/// <param name="EndsLine">Whether the text ends with a line end, or is empty.</param>
internal readonly record struct LogTail(int Start, int Delimiters, bool IsOpen, bool EndsLine)
{
    /// <summary>Looks at a whole file's text.</summary>
    public static LogTail Of(string text, char delimiter)
    {
        var (start, delimiters, open) = (0, 0, false);
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (letter == '"') open = !open;
            else if (open) continue;
            else if (letter == delimiter) delimiters++;
            else if (letter == '\n') (start, delimiters) = (i + 1, 0);
        }

        return new(start, delimiters, open, start == text.Length);
    }
}
