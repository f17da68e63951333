using System.Collections;
using System.Globalization;
using System.Net;
using System.Reflection;
using System.Text;
using MathNet.Numerics.LinearAlgebra;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// A matrix, or things of one kind in a row, as a table. What the library itself makes has words of its own and is left alone.
/// </summary>
/// <param name="Heads">The columns' names; null for a matrix.</param>
/// <param name="Rows">The texts of the cells.</param>
/// <param name="More">What is left out, as a sentence; null where nothing is.</param>
internal sealed record RowsTable(IReadOnlyList<string>? Heads, IReadOnlyList<IReadOnlyList<string>> Rows, string? More)
{
    private const int MostRows = 50, MostColumns = 30;

    /// <summary>The table of a value; null where it is none.</summary>
    public static RowsTable? Of(object? value) => value switch
    {
        Array { Rank: 2 } grid => OfGrid(grid.GetLength(0), grid.GetLength(1), (row, column) => grid.GetValue(
            grid.GetLowerBound(0) + row, grid.GetLowerBound(1) + column)),
        Matrix<double> matrix => OfGrid(matrix.RowCount, matrix.ColumnCount, (row, column) => matrix[row, column]),
        string or IDictionary or null => null,
        IEnumerable things when ElementOf(things.GetType()) is { } type && Columns(type) is { Length: > 0 } columns =>
            OfThings(things, columns),
        _ => null,
    };

    /// <summary>The table in HTML.</summary>
    public string Html()
    {
        var html = new StringBuilder("<table>");
        if (Heads is not null) Row(html.Append("<thead>"), "th", Heads).Append("</thead>");
        html.Append("<tbody>");
        foreach (var row in Rows) Row(html, "td", row);
        html.Append("</tbody></table>");
        return More is null ? html.ToString() : html.Append(CultureInfo.InvariantCulture, $"<p>{More}</p>").ToString();
    }

    /// <summary>The table in plain text, in columns.</summary>
    public string Plain()
    {
        var rows = Heads is null ? Rows : [Heads, .. Rows];
        var widths = Enumerable.Range(0, rows.Max(row => row.Count)).Select(column => rows.Max(row => row[column].Length)).ToList();
        var lines = rows.Select(row => string.Join("  ", row.Select((text, column) => text.PadRight(widths[column]))).TrimEnd());
        return string.Join('\n', More is null ? lines : lines.Append(More));
    }

    private static RowsTable? OfGrid(int rows, int columns, Func<int, int, object?> at)
    {
        if (rows == 0 || columns == 0) return null;
        var texts = Enumerable.Range(0, Math.Min(rows, MostRows)).Select(row =>
            (IReadOnlyList<string>)[.. Enumerable.Range(0, Math.Min(columns, MostColumns)).Select(column => Text(at(row, column)))]);
        var more = rows > MostRows || columns > MostColumns ? $"{rows} rows and {columns} columns in all." : null;
        return new(null, [.. texts], more);
    }

    private static RowsTable? OfThings(IEnumerable things, PropertyInfo[] columns)
    {
        var first = things.Cast<object?>().Take(MostRows + 1).ToList();
        if (first.Count == 0 || first.Contains(null)) return null;
        var rows = first.Take(MostRows)
            .Select(thing => (IReadOnlyList<string>)[.. columns.Select(column => Text(column.GetValue(thing)))]);
        var all = things is ICollection { Count: var count } ? $"{count} rows in all." : "More rows follow.";
        return new([.. columns.Select(column => column.Name)], [.. rows], first.Count > MostRows ? all : null);
    }

    private static Type? ElementOf(Type sequence) => sequence.GetInterfaces().Append(sequence)
        .Where(type => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEnumerable<>))
        .Select(type => type.GetGenericArguments()[0]).FirstOrDefault();

    /// <summary>The properties of a type made in a cell or a package, if all are simple values.</summary>
    private static PropertyInfo[]? Columns(Type type)
    {
        if (IsSimple(type) || type.Assembly.GetName().Name?.StartsWith("SplitBatch", StringComparison.Ordinal) == true) return null;
        if (typeof(IEnumerable).IsAssignableFrom(type) || type.Namespace?.StartsWith("System", StringComparison.Ordinal) == true)
            return null;
        var found = type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0)
            .ToArray();
        return found.Length <= MostColumns && found.All(p => p.CanRead && IsSimple(p.PropertyType)) ? found : null;
    }

    private static bool IsSimple(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        return type.IsPrimitive || type.IsEnum || type == typeof(string) || type == typeof(decimal) || type == typeof(Guid)
            || type == typeof(TimeSpan) || typeof(IFormattable).IsAssignableFrom(type);
    }

    private static string Text(object? value) =>
        value is IFormattable words ? words.ToString(null, CultureInfo.InvariantCulture) : $"{value}";

    private static StringBuilder Row(StringBuilder html, string cell, IReadOnlyList<string> texts)
    {
        html.Append("<tr>");
        foreach (var text in texts)
            html.Append('<').Append(cell).Append('>').Append(WebUtility.HtmlEncode(text)).Append("</").Append(cell).Append('>');
        return html.Append("</tr>");
    }
}
