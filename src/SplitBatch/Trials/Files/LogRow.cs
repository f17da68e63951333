using System.Globalization;

namespace SplitBatch.Trials.Files;

/// <summary>One row of a log as text, column by column; numbers have a decimal point whatever the file uses.</summary>
internal sealed class LogRow : BrewDay.ILogged
{
    private readonly Dictionary<string, string> cells;

    private LogRow(Dictionary<string, string> cells) => this.cells = cells;

    /// <inheritdoc/>
    public string Id => this["id"];

    /// <inheritdoc/>
    public string? Supersedes => Blank(this["supersedes"]);

    /// <inheritdoc/>
    public string? Reason => Blank(this["reason"]);

    /// <summary>The text under a column; empty where the cell is blank or the column is not there.</summary>
    public string this[string column] => cells.GetValueOrDefault(column, "");

    /// <summary>The columns that hold something.</summary>
    public IEnumerable<string> Columns => cells.Keys;

    /// <summary>The row as column=text, blanks left out.</summary>
    public override string ToString() => string.Join(", ", cells.Select(cell => $"{cell.Key} {cell.Value}"));

    internal static LogRow Of(IReadOnlyDictionary<string, string> given, LogFormat format)
    {
        var cells = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (column, value) in given)
        {
            var text = value?.Trim() ?? "";
            if (text.Length == 0) continue;
            if (!format.Columns.Contains(column, StringComparer.OrdinalIgnoreCase))
            {
                throw Refusal(format, column, text, "The log has no such column.", string.Join(", ", format.Columns),
                    Nearest.Suggestion(column, format.Columns));
            }

            if (text.AsSpan().IndexOfAny('\n', '\r', '\0') >= 0)
            {
                throw Refusal(format, column, text, "A row of a log is one line.",
                    "text without line breaks; longer notes go into the notes folder");
            }

            if (format.Numbers.Contains(column) && !NumberText.TryRead(text, DecimalMark.Point, out _, out var problem))
            {
                throw Refusal(format, column, text, problem, "a number with a decimal point");
            }

            cells[column] = text;
        }

        var row = new LogRow(cells);
        if (row.Id.Length == 0) throw Refusal(format, "id", "", "The id is missing.", "an id unlike any other in the log");
        if (row.Id.StartsWith('#'))
            throw Refusal(format, "id", row.Id, "A row that starts with # would be read as a remark.",
                "an id that starts with a letter or a digit");
        return row;
    }

    internal static LogRow Of(CsvRow row, LogFormat format, DecimalMark mark)
    {
        var cells = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var column in format.Columns)
        {
            if (row.Optional(column) is not { } text) continue;
            cells[column] = mark == DecimalMark.Comma && NumberText.TryRead(text, mark, out var number, out _)
                ? number.ToString("R", CultureInfo.InvariantCulture)
                : text;
        }

        return new LogRow(cells);
    }

    internal bool SameAs(LogRow other) =>
        cells.Keys.Union(other.cells.Keys, StringComparer.OrdinalIgnoreCase).All(column => Same(this[column], other[column]));

    private static bool Same(string left, string right) =>
        left == right
        || (NumberText.TryRead(left, DecimalMark.Point, out var x, out _)
            && NumberText.TryRead(right, DecimalMark.Point, out var y, out _) && x.Equals(y));

    private static string? Blank(string text) => text.Length == 0 ? null : text;

    private static LogException Refusal(LogFormat format, string column, string value, string problem, string accepted,
        string? suggestion = null) =>
            new(new Fault(format.FileName, problem) { Column = column, Value = value, Accepted = accepted, Suggestion = suggestion });
}
