namespace SplitBatch.Trials.Files;

/// <summary>Reads a log's text as it may be found after a crash.</summary>
public static class LogText
{
    /// <summary>Reads a log as a table. A row at the end that was cut short is left out and becomes a warning.</summary>
    /// <param name="format">Which log.</param>
    /// <param name="text">The whole file.</param>
    /// <param name="faults">Takes what is wrong.</param>
    /// <param name="mark">How decimals are written; when null, told from what separates the values.</param>
    public static CsvTable Table(LogFormat format, string text, FaultList faults, DecimalMark? mark = null)
    {
        ArgumentNullException.ThrowIfNull(format);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(faults);
        if (LogSheet.TornAt(format, text) is { } start)
        {
            faults.Add(new Fault(format.FileName, "The last row was cut short while it was written, and was never acknowledged; it is left out.")
            {
                Row = text.AsSpan(0, start).Count('\n') + 1,
                Value = text[start..],
                Severity = Severity.Warning,
                Suggestion = "Log it again if it was not; the next row logged moves the remains out of the way.",
            });
            text = text[..start];
        }

        return CsvTable.Read(format.FileName, new StringReader(text), faults, mark);
    }
}

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
