using System.Globalization;
using System.Text;
using Microsoft.Data.Analysis;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Tables;

namespace SplitBatch.Display.Notebooks;

/// <summary>
/// Tables as HTML for a notebook: every text encoded, numbers to the right, long ones cut with a word about it. They take
/// the notebook's colours, because notebooks give rows a ground of their own, which may be dark.
/// </summary>
internal static class HtmlTable
{
    private const string Style =
        "style=\"border-collapse:collapse;font-size:14px;border-top:2px solid;border-bottom:1px solid\"";

    public static string Write(Table table, int limit) => Write(
        table.Caption,
        [.. table.Columns.Select(c => (c.Heading, c.IsNumber))],
        table.Rows.Count,
        table.Cell,
        table.Note,
        limit);

    public static string Write(DataFrame frame, int limit)
    {
        var decimals = frame.Columns.Select(Decimals).ToList();
        return Write(
            "",
            [.. frame.Columns.Select(c => (c.Name, IsNumber(c)))],
            (int)Math.Min(frame.Rows.Count, int.MaxValue),
            (row, column) => Text(frame.Columns[column][row], decimals[column]),
            "",
            limit);
    }

    /// <summary>The frame as lines of text with aligned columns.</summary>
    public static string PlainText(DataFrame frame, int limit)
    {
        var decimals = frame.Columns.Select(Decimals).ToList();
        var shown = (int)Math.Min(frame.Rows.Count, limit);
        var cells = Enumerable.Range(0, shown).Select(r => frame.Columns.Select((c, i) => Text(c[r], decimals[i])).ToList());
        return PlainTable.Write([.. frame.Columns.Select(c => (c.Name, IsNumber(c)))], [.. cells], Cut(frame.Rows.Count, shown));
    }

    public static string PlainText(Table table, int limit)
    {
        var shown = Math.Min(table.Rows.Count, limit);
        var cells = Enumerable.Range(0, shown)
            .Select(r => Enumerable.Range(0, table.Columns.Count).Select(c => table.Cell(r, c)).ToList());
        var text = PlainTable.Write([.. table.Columns.Select(c => (c.Heading, c.IsNumber))], [.. cells], Cut(table.Rows.Count, shown));
        return $"{table.Caption}\n{text}{(table.Note.Length > 0 ? "\n" + table.Note : "")}";
    }

    private static string Write(
        string caption, IReadOnlyList<(string Heading, bool IsNumber)> columns, int rows, Func<int, int, string> cell,
        string note, int limit)
    {
        var html = new StringBuilder();
        var shown = Math.Min(rows, limit);
        html.Append(CultureInfo.InvariantCulture, $"<div style=\"overflow-x:auto;margin:0.5em 0\"><table {Style}>\n");
        if (caption.Length > 0)
            html.Append(CultureInfo.InvariantCulture,
                $"<caption style=\"text-align:left;font-weight:bold;padding:4px 0\">{Xml.Text(caption)}</caption>\n");
        html.Append("<thead><tr>");
        foreach (var (heading, isNumber) in columns)
            html.Append(CultureInfo.InvariantCulture,
                $"<th scope=\"col\" style=\"text-align:{Side(isNumber)};padding:4px 10px;border-bottom:1px "
                    + $"solid\">{Xml.Text(heading)}</th>");
        html.Append("</tr></thead>\n<tbody>\n");
        for (var row = 0; row < shown; row++)
        {
            html.Append("<tr>");
            for (var column = 0; column < columns.Count; column++)
                html.Append(CultureInfo.InvariantCulture,
                    $"<td style=\"text-align:{Side(columns[column].IsNumber)};padding:3px "
                        + $"10px;font-variant-numeric:tabular-nums\">{Xml.Text(cell(row, column))}</td>");
            html.Append("</tr>\n");
        }

        html.Append("</tbody></table>");
        foreach (var line in new[] { Cut(rows, shown), note }.Where(l => l.Length > 0))
            html.Append(CultureInfo.InvariantCulture, $"<p style=\"margin:4px 0;font-size:13px;opacity:0.8\">{Xml.Text(line)}</p>");
        return html.Append("</div>").ToString();
    }

    private static string Cut(long rows, long shown) => rows > shown
        ? string.Create(CultureInfo.InvariantCulture, $"{shown} of {rows} rows are shown; the rest is in the data frame.")
        : "";

    private static string Side(bool isNumber) => isNumber ? "right" : "left";

    private static bool IsNumber(DataFrameColumn column) => column.IsNumericColumn();

    /// <summary>The decimals that show every value to five significant digits, and no more than any value has.</summary>
    private static int Decimals(DataFrameColumn column)
    {
        if (!column.IsNumericColumn()
            || column.DataType is { } t && (t == typeof(int) || t == typeof(long) || t == typeof(byte) || t == typeof(short))) return 0;
        var needed = 0;
        for (long i = 0; i < Math.Min(column.Length, 1000); i++)
        {
            if (column[i] is not { } cell) continue;
            var value = Convert.ToDouble(cell, CultureInfo.InvariantCulture);
            if (!double.IsFinite(value) || value == 0) continue;
            var text = Math.Abs(value).ToString("G5", CultureInfo.InvariantCulture);
            if (text.Contains('E', StringComparison.Ordinal)) needed = Math.Max(needed, value < 1 ? 8 : 0);
            else if (text.IndexOf('.', StringComparison.Ordinal) is var dot and >= 0) needed = Math.Max(needed, text.Length - dot - 1);
        }

        return Math.Min(needed, 8);
    }

    private static string Text(object? value, int decimals) => value switch
    {
        null => "\u2013",
        double or float or decimal => Printed.Fixed(Convert.ToDouble(value, CultureInfo.InvariantCulture), decimals),
        IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
