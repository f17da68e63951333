namespace SplitBatch.Trials.Files;

/// <summary>How a CSV file's text ends: whether its last row was written to the end.</summary>
/// <param name="Start">Where the last record starts, in characters, if the text does not end with a line end; else the text's length.</param>
/// <param name="Delimiters">Delimiters in that record, outside quotation marks.</param>
/// <param name="IsOpen">Whether a quotation mark is still open.</param>
/// <param name="EndsLine">Whether the text ends with a line end, or is empty.</param>
internal readonly record struct CsvTail(int Start, int Delimiters, bool IsOpen, bool EndsLine)
{
    /// <summary>Looks at a whole file's text; remarks, which start with #, hold no records.</summary>
    public static CsvTail Of(string text, char delimiter)
    {
        var (start, delimiters, open) = (0, 0, false);
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (letter == '#' && i == start && !open)
            {
                var end = text.IndexOf('\n', i);
                if (end < 0) return new(start, 0, false, false);
                (i, start) = (end, end + 1);
            }
            else if (letter == '"') open = !open;
            else if (open) continue;
            else if (letter == delimiter) delimiters++;
            else if (letter == '\n') (start, delimiters) = (i + 1, 0);
        }

        return new(start, delimiters, open, start == text.Length);
    }
}
