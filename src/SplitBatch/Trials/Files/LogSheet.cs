namespace SplitBatch.Trials.Files;

/// <summary>A log's text, taken apart: its dialect, its rows, and how a further row would be written.</summary>
internal sealed class LogSheet
{
    private readonly LogFormat format;
    private readonly IReadOnlyList<string> columns;
    private readonly char delimiter;
    private readonly DecimalMark mark;
    private readonly string header;
    private readonly bool endsLine;

    private LogSheet(LogFormat format, CsvTable? table, DecimalMark mark, string header, bool endsLine)
    {
        this.format = format;
        columns = table is null ? format.Columns : [.. table.Columns.Select(column => column.Name)];
        delimiter = table?.Delimiter[0] ?? ',';
        this.mark = mark;
        this.header = header;
        this.endsLine = endsLine;
        History = new(table is null ? [] : table.Rows.Select(row => LogRow.Of(row, format, mark)));
    }

    /// <summary>What has to be written before the first row; null in a file that has its header.</summary>
    public string? MissingHeader => header.Length == 0 ? string.Join(',', format.Columns) : null;

    /// <summary>The rows, in the order logged, and what supersedes what.</summary>
    public BrewDay.LogHistory<LogRow> History { get; }

    /// <summary>Reads a log that has no torn row.</summary>
    /// <exception cref="LogException">The header lacks a column, or the text cannot be read as CSV.</exception>
    public static LogSheet Read(LogFormat format, string text, DecimalMark? mark = null)
    {
        if (text.Trim('\uFEFF', ' ', '\r', '\n').Length == 0)
        {
            return new(format, null, mark ?? DecimalMark.Point, "", true);
        }

        var table = Parse(format, text, mark);
        return new(format, table, table.Mark, HeaderOf(text), text.EndsWith('\n'));
    }

    /// <summary>Takes in what others have added since, if the sheet can be read on from where it stood.</summary>
    /// <param name="more">The text that follows what was read.</param>
    /// <returns>False where the whole must be read again.</returns>
    public bool ReadOn(string more)
    {
        if (more.Length == 0) return true;
        if (header.Length == 0 || !endsLine || !more.EndsWith('\n')) return false;
        var table = Parse(format, header + "\n" + more, mark);
        foreach (var row in table.Rows) History.Add(LogRow.Of(row, format, mark));
        return true;
    }

    /// <summary>Where a row that was cut short starts in a log's text; null where the text ends well.</summary>
    public static int? TornAt(LogFormat format, string text)
    {
        if (text.Length == 0 || text[^1] == '\n') return null;
        var header = HeaderOf(text);
        var separator = CsvTable.DelimiterOf(header)[0];
        var tail = CsvTail.Of(text, separator);
        if (tail.EndsLine) return null;
        var last = text[tail.Start..];
        var whole = string.Join(',', format.Columns);
        if (last == header) return last.Length < whole.Length && whole.StartsWith(last, StringComparison.Ordinal) ? tail.Start : null;
        if (string.IsNullOrWhiteSpace(last) || last.StartsWith('#')) return null;
        return tail.IsOpen || tail.Delimiters < header.Count(letter => letter == separator) ? tail.Start : null;
    }

    /// <summary>Checks that a correction names a row in force and says why.</summary>
    /// <exception cref="LogException">It does not.</exception>
    public void CheckCorrection(LogRow row)
    {
        if (History.ProblemsWith(row).FirstOrDefault() is not { } problem) return;
        throw new LogException(new Fault(format.FileName, problem.Problem)
        {
            Column = problem.Column,
            Value = row[problem.Column],
            Accepted = "for a correction, the id of the row in force and a reason; for a new row, neither",
        });
    }

    /// <summary>The row as it is to be written, with the file's own separators and decimals.</summary>
    /// <exception cref="LogException">The row has a value for which the file has no column.</exception>
    public string Render(LogRow row) =>
        CsvText.Row(format.FileName, columns, delimiter, row.Columns.ToDictionary(column => column, column => AsTheFile(row[column])));

    private string AsTheFile(string cell) =>
        mark != DecimalMark.Point && NumberText.TryRead(cell, DecimalMark.Point, out var number, out _)
            ? NumberText.Write(number, mark)
            : cell;

    private static CsvTable Parse(LogFormat format, string text, DecimalMark? mark)
    {
        var faults = new FaultList();
        var table = CsvTable.Read(format.FileName, new StringReader(text), faults, mark);
        table.Require([.. format.Needed]);
        return faults.HasErrors ? throw new LogException(faults.First(fault => fault.Severity == Severity.Error)) : table;
    }

    private static string HeaderOf(string text)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            // The text may be Latin-1, where a byte-order mark is three letters; a spreadsheet puts remarks into quotation marks.
            if (!line.IsWhiteSpace() && !line.TrimStart("\uFEFF\u00EF\u00BB\u00BF\"").StartsWith('#'))
                return line.TrimStart('\uFEFF').ToString();
        }

        return "";
    }
}

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
