namespace SplitBatch.Trials.Files;

/// <summary>Reads a log's text as it may be found after a crash.</summary>
internal static class LogText
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
            faults.Add(TrialFolder.CutShort(format.FileName, text[..start], text[start..]));
            text = text[..start];
        }

        return CsvTable.Read(format.FileName, new StringReader(text), faults, mark);
    }
}
