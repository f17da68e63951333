using System.Text;

namespace SplitBatch.Trials.Files;

/// <summary>A log's text, taken apart: its dialect, its rows, and how a further row would be written.</summary>
internal sealed class LogSheet
{
    private readonly LogFormat format;
    private readonly IReadOnlyList<string> columns;
    private readonly char delimiter;
    private readonly DecimalMark mark;
    private readonly string header;
    private readonly string lineEnd;
    private string prefix;

    private LogSheet(LogFormat format, CsvTable? table, DecimalMark mark, string header, string lineEnd, string prefix)
    {
        this.format = format;
        columns = table is null ? format.Columns : [.. table.Columns.Select(column => column.Name)];
        delimiter = table?.Delimiter[0] ?? ',';
        this.mark = mark;
        this.header = header;
        this.lineEnd = lineEnd;
        this.prefix = prefix;
        History = new(table is null ? [] : table.Rows.Select(row => LogRow.Of(row, format, mark)));
    }

    /// <summary>The rows, in the order logged, and what supersedes what.</summary>
    public BrewDay.LogHistory<LogRow> History { get; }

    /// <summary>Reads a log that has no torn row.</summary>
    /// <exception cref="LogException">The header lacks a column, or the text cannot be read as CSV.</exception>
    public static LogSheet Read(LogFormat format, string text, DecimalMark? mark = null)
    {
        if (text.Trim('\uFEFF', ' ', '\r', '\n').Length == 0)
        {
            return new(format, null, mark ?? DecimalMark.Point, "", "\n", string.Join(',', format.Columns) + "\n");
        }

        var table = Parse(format, text, mark);
        var lineEnd = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        return new(format, table, table.Mark, HeaderOf(text), lineEnd, text.EndsWith('\n') ? "" : text.EndsWith('\r') ? "\n" : lineEnd);
    }

    /// <summary>Takes in what others have added since, if the sheet can be read on from where it stood.</summary>
    /// <param name="more">The text that follows what was read.</param>
    /// <returns>False where the whole must be read again.</returns>
    public bool ReadOn(string more)
    {
        if (more.Length == 0) return true;
        if (header.Length == 0 || prefix.Length > 0 || !more.EndsWith('\n')) return false;
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
        var tail = LogTail.Of(text, separator);
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

    /// <summary>The row as it is to be written, with a header before it in a new file.</summary>
    /// <exception cref="LogException">The row has a value for which the file has no column.</exception>
    public string Render(LogRow row)
    {
        if (row.Columns.FirstOrDefault(column => !columns.Contains(column, StringComparer.OrdinalIgnoreCase)) is { } homeless)
        {
            throw new LogException(new Fault(format.FileName, "The file has no column for this value.")
            {
                Column = homeless,
                Value = row[homeless],
                Accepted = $"one of the file's columns: {string.Join(", ", columns)}",
                Suggestion = $"Add a column headed {homeless} to the file, or leave the value out.",
            });
        }

        var text = new StringBuilder(prefix);
        for (var i = 0; i < columns.Count; i++)
        {
            if (i > 0) text.Append(delimiter);
            var cell = row[columns[i]];
            if (NumberText.TryRead(cell, DecimalMark.Point, out var number, out _)) cell = mark == DecimalMark.Point ? cell : NumberText.Write(number, mark);
            var isLast = i == columns.Count - 1;
            if (isLast || cell.AsSpan().IndexOfAny(delimiter, '"') >= 0 || cell.StartsWith('#')) text.Append('"').Append(cell.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
            else text.Append(cell);
        }

        return text.Append(lineEnd).ToString();
    }

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
            if (!line.IsWhiteSpace() && !line.TrimStart("\uFEFF\u00EF\u00BB\u00BF\"").StartsWith('#')) return line.TrimStart('\uFEFF').ToString();
        }

        return "";
    }
}
