using System.Text;

namespace SplitBatch.Display.Notebooks;

/// <summary>Tables as lines of text, columns aligned.</summary>
internal static class PlainTable
{
    public static string Write(IReadOnlyList<(string Heading, bool IsNumber)> columns, IReadOnlyList<IReadOnlyList<string>> rows,
        string note)
    {
        var widths = columns.Select((c, i) => rows.Select(r => r[i].Length).Append(c.Heading.Length).Max()).ToList();
        var text = new StringBuilder();
        Line([.. columns.Select(c => c.Heading)]);
        Line([.. widths.Select(w => new string('-', w))]);
        foreach (var row in rows) Line(row);
        if (note.Length > 0) text.Append(note).Append('\n');
        return text.ToString().TrimEnd('\n');

        void Line(IReadOnlyList<string> cells)
        {
            var padded = cells.Select((cell, i) => columns[i].IsNumber ? cell.PadLeft(widths[i]) : cell.PadRight(widths[i]));
            text.Append(string.Join("  ", padded).TrimEnd()).Append('\n');
        }
    }
}
