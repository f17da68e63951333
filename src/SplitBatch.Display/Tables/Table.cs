using System.Globalization;
using Microsoft.Data.Analysis;

namespace SplitBatch.Display.Tables;

/// <summary>What a column of a <see cref="Table"/> holds.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Unit">The unit of its numbers, such as <c>g</c>; empty for none.</param>
/// <param name="Decimals">Decimals shown, in [0, 10]; null for a column of words.</param>
public sealed record TableColumn(string Name, string Unit = "", int? Decimals = null)
{
    /// <summary>Whether it holds numbers.</summary>
    public bool IsNumber => Decimals is not null;

    /// <summary>Name and unit, such as <c>amount [g]</c>.</summary>
    public string Heading => Unit.Length == 0 ? Name : $"{Name} [{Unit}]";
}

/// <summary>
/// A small table for a reader: a caption, columns with units in their headings, and rows of words, numbers and gaps.
/// Ends a notebook cell as a table; <see cref="Frame"/> is the same as a data frame to calculate with.
/// </summary>
public sealed record Table
{
    /// <summary>A table from its columns and rows.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="columns">One or more columns with different headings.</param>
    /// <param name="rows">For each row one value per column: text, a number, or null for a gap.</param>
    /// <exception cref="ArgumentException">A row has another number of values than there are columns, a value does not fit its column, or
    /// two headings are the same.</exception>
    public Table(string caption, IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<object?>> rows)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        if (columns.Count == 0) throw new ArgumentException("A table needs at least one column.", nameof(columns));
        if (columns.GroupBy(c => c.Heading).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two columns are headed \"{twice.Key}\".", nameof(columns));
        for (var i = 0; i < rows.Count; i++) Check(columns, rows[i], i);
        (Caption, Columns, Rows) = (caption, columns, rows);
    }

    /// <summary>What the table shows.</summary>
    public string Caption { get; init; }

    /// <summary>A sentence below the table: how to read it, or what a mark means.</summary>
    public string Note { get; init; } = "";

    /// <summary>The columns.</summary>
    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>The rows: for each column a text, a number (double) or null.</summary>
    public IReadOnlyList<IReadOnlyList<object?>> Rows { get; }

    /// <summary>The same as a data frame, headings with units.</summary>
    public DataFrame Frame => new(Columns.Select((column, i) => column.IsNumber
        ? (DataFrameColumn)new DoubleDataFrameColumn(column.Heading, Rows.Select(r => Number(r[i])))
        : new StringDataFrameColumn(column.Heading, Rows.Select(r => (string?)r[i]))));

    /// <summary>The value as a reader sees it: numbers with their column's decimals, a gap as a dash.</summary>
    /// <param name="row">The row, from 0.</param>
    /// <param name="column">The column, from 0.</param>
    public string Cell(int row, int column) => Rows[row][column] switch
    {
        null => "\u2013",
        string text => text,
        var number => Printed.Fixed(Number(number)!.Value, Columns[column].Decimals ?? 2),
    };

    /// <summary>For example <c>The two charges (2 rows)</c>.</summary>
    public override string ToString() => $"{Caption} ({Rows.Count} {(Rows.Count == 1 ? "row" : "rows")})";

    private static double? Number(object? value) => value switch
    {
        null => null,
        double d => d,
        _ => Convert.ToDouble(value, CultureInfo.InvariantCulture),
    };

    private static void Check(IReadOnlyList<TableColumn> columns, IReadOnlyList<object?> row, int index)
    {
        if (row.Count != columns.Count)
            throw new ArgumentException($"Row {index + 1} has {row.Count} values; the table has {columns.Count} columns.", nameof(row));
        for (var i = 0; i < columns.Count; i++)
        {
            var fits = row[i] is null || (columns[i].IsNumber ? row[i] is double or float or int or long or decimal : row[i] is string);
            if (!fits)
                throw new ArgumentException($"Row {index + 1}, column \"{columns[i].Heading}\" is {row[i]}; it must be "
                    + $"{(columns[i].IsNumber ? "a number" : "text")}.", nameof(row));
        }
    }
}
