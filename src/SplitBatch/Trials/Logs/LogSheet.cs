using System.Text;

namespace SplitBatch.Trials.Logs;

/// <summary>A log's text, taken apart: its dialect, its rows, and how a further row would be written.</summary>
internal sealed class LogSheet
{
    private readonly LogFormat format;
    private readonly IReadOnlyList<string> columns;
    private readonly char delimiter;
    private readonly DecimalMark mark;
    private readonly string prefix;
    private readonly string lineEnd;
    private readonly Lab.LogHistory<LogRow> history;

    private LogSheet(LogFormat format, IReadOnlyList<string> columns, char delimiter, DecimalMark mark, string prefix, string lineEnd, IReadOnlyList<LogRow> rows)
    {
        this.format = format;
        this.columns = columns;
        this.delimiter = delimiter;
        this.mark = mark;
        this.prefix = prefix;
        this.lineEnd = lineEnd;
        Rows = rows;
        history = new(rows);
    }

    /// <summary>The rows, in the order logged.</summary>
    public IReadOnlyList<LogRow> Rows { get; }

    /// <summary>Reads a log that has no torn row.</summary>
    /// <exception cref="LogException">The header lacks a column, or the text cannot be read as CSV.</exception>
    public static LogSheet Read(LogFormat format, string text)
    {
        if (text.Trim('\uFEFF', ' ', '\r', '\n').Length == 0)
        {
            return new(format, format.Columns, ',', DecimalMark.Point, string.Join(',', format.Columns) + "\n", "\n", []);
        }

        var faults = new FaultList();
        var table = CsvTable.Read(format.FileName, new StringReader(text), faults);
        table.Require([.. format.Needed]);
        if (faults.HasErrors) throw new LogException(faults.First(fault => fault.Severity == Severity.Error));
        var lineEnd = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var prefix = text.EndsWith('\n') ? "" : text.EndsWith('\r') ? "\n" : lineEnd;
        return new(
            format, [.. table.Columns.Select(column => column.Name)], table.Delimiter[0], table.Mark, prefix, lineEnd,
            [.. table.Rows.Select(row => LogRow.Of(row, format, table.Mark))]);
    }

    /// <summary>Where a row that was cut short starts, in bytes; null where the file ends well.</summary>
    public static int? TornAt(LogFormat format, ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty || bytes[^1] == '\n') return null;

        // Bytes and characters must agree on positions, so the text is taken as Latin-1; quotes and delimiters are ASCII.
        var text = Encoding.Latin1.GetString(bytes);
        var header = text.Split('\n').FirstOrDefault(line => line.Trim().Length > 0 && !line.StartsWith('#')) ?? "";
        var separator = CsvTable.DelimiterOf(header)[0];
        var tail = LogTail.Of(text, separator);
        if (tail.EndsLine) return null;
        var last = text[tail.Start..];
        if (last == header) return string.Join(',', format.Columns).StartsWith(last, StringComparison.Ordinal) && last.Length < string.Join(',', format.Columns).Length ? tail.Start : null;
        if (string.IsNullOrWhiteSpace(last) || last.StartsWith('#')) return null;
        return tail.IsOpen || tail.Delimiters < header.Count(letter => letter == separator) ? tail.Start : null;
    }

    /// <summary>The row of that id, or null.</summary>
    public LogRow? Find(string id) => history.Find(id);

    /// <summary>Checks that a correction names a row in force and says why.</summary>
    /// <exception cref="LogException">It does not.</exception>
    public void CheckCorrection(LogRow row)
    {
        var trial = new Lab.LogHistory<LogRow>(Rows.Append(row));
        if (trial.Problems.FirstOrDefault(problem => ReferenceEquals(problem.Row, row)) is not { } problem) return;
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
}
