namespace SplitBatch.Trials.Files;

/// <summary>Writes cells and rows so that <see cref="CsvTable"/> and a spreadsheet read them back.</summary>
internal static class CsvText
{
    /// <summary>The text as one cell, in quotation marks where it needs them.</summary>
    public static string Cell(string? text, char delimiter = ',')
    {
        var plain = (text ?? "").ReplaceLineEndings(" ").Trim();
        return plain.AsSpan().IndexOfAny(delimiter, '"') >= 0 || plain.StartsWith('#')
            ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : plain;
    }

    /// <summary>A row under the columns of a file.</summary>
    /// <param name="file">The file's name, for the message.</param>
    /// <param name="columns">Its columns, in order.</param>
    /// <param name="delimiter">What separates its values.</param>
    /// <param name="cells">Column to text.</param>
    /// <exception cref="LogException">A value has no column.</exception>
    public static string Row(string file, IReadOnlyList<string> columns, char delimiter, IReadOnlyDictionary<string, string> cells)
    {
        if (cells.Keys.FirstOrDefault(column => !columns.Contains(column, StringComparer.OrdinalIgnoreCase)) is { } homeless)
        {
            throw new LogException(new Fault(file, "The file has no column for this value.")
            {
                Column = homeless,
                Value = cells[homeless],
                Accepted = $"one of the file's columns: {string.Join(", ", columns)}",
                Suggestion = $"Add a column headed {homeless} to the file, or leave the value out.",
            });
        }

        var given = new Dictionary<string, string>(cells, StringComparer.OrdinalIgnoreCase);
        return string.Join(delimiter, columns.Select(column => Cell(given.GetValueOrDefault(column), delimiter)));
    }
}

/// <summary>How a CSV file's text ends: whether its last row was written to the end.</summary>
/// <param name="Start">Where the last record starts, in characters, if the text does not end with a line end; else the text's
/// length.</param>
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
