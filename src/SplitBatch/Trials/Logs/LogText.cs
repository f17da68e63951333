namespace SplitBatch.Trials.Logs;

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
