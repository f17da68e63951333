using System.Globalization;
using System.Text;
using SplitBatch.Display.Tables;

namespace SplitBatch.Display.WriteUp;

/// <summary>Writes a table as CSV (RFC 4180, UTF-8, comma, line feeds), unrounded, with units in the headings.</summary>
internal static class CsvWriter
{
    public static string Write(Table table)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', table.Columns.Select(c => Quote(Inert(c.Heading)))).Append('\n');
        foreach (var row in table.Rows) text.AppendJoin(',', row.Select(Cell)).Append('\n');
        return text.ToString();
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        string text => Quote(Inert(text)),
        double number when !double.IsFinite(number) => "",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => Quote(Inert(value.ToString() ?? "")),
    };

    /// <summary>
    /// A text that a spreadsheet would take for a formula gets an apostrophe in front, which spreadsheets read as "this is text".
    /// </summary>
    internal static string Inert(string text)
    {
        var start = text.TrimStart();
        return start.Length > 0 && "=+-@\uFF1D\uFF0B\uFF0D\uFF20|%".Contains(start[0], StringComparison.Ordinal) ? "'" + text : text;
    }

    private static string Quote(string text) =>
        text.AsSpan().IndexOfAny(",\"\n\r") >= 0 || text.Length != text.Trim().Length
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
}
