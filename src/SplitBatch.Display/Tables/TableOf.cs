namespace SplitBatch.Display.Tables;

/// <summary>Makes a table of things, one row for each.</summary>
public static class TableOf
{
    /// <summary>
    /// Starts a table: columns are added by <see cref="TableOf{T}.Text"/>, <see cref="TableOf{T}.Number"/> and
    /// <see cref="TableOf{T}.Percent"/>.
    /// </summary>
    /// <typeparam name="T">What a row shows.</typeparam>
    /// <param name="rows">The things.</param>
    /// <param name="caption">What the table shows.</param>
    /// <example><code>TableOf.Each(trial.Lots, "Hop lots").Text("lot", lot => lot.Name).ToTable()</code></example>
    public static TableOf<T> Each<T>(IEnumerable<T> rows, string caption)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return new TableOf<T>(caption, [.. rows]);
    }
}

/// <summary>A table in the making: rows are known, columns are added one by one.</summary>
/// <typeparam name="T">What a row shows.</typeparam>
public sealed class TableOf<T>
{
    private readonly string _caption;
    private readonly IReadOnlyList<T> _rows;
    private readonly IReadOnlyList<(TableColumn Column, Func<T, object?> Value)> _columns;
    private readonly string _note = "";

    internal TableOf(string caption, IReadOnlyList<T> rows) : this(caption, rows, [], "")
    {
    }

    private TableOf(string caption, IReadOnlyList<T> rows, IReadOnlyList<(TableColumn, Func<T, object?>)> columns, string note) =>
        (_caption, _rows, _columns, _note) = (caption, rows, columns, note);

    /// <summary>With a column of words.</summary>
    /// <param name="name">Its heading.</param>
    /// <param name="value">The words of a row; null for a gap.</param>
    public TableOf<T> Text(string name, Func<T, string?> value) => With(new TableColumn(name), value);

    /// <summary>With a column of numbers.</summary>
    /// <param name="name">Its heading.</param>
    /// <param name="value">The number of a row; null for a gap.</param>
    /// <param name="unit">The unit; empty for a count or a share.</param>
    /// <param name="decimals">Decimals shown, in [0, 10].</param>
    public TableOf<T> Number(string name, Func<T, double?> value, string unit = "", int decimals = 1) =>
        With(new TableColumn(name, unit, decimals), row => value(row));

    /// <summary>With a column of shares, shown as percentages.</summary>
    /// <param name="name">Its heading.</param>
    /// <param name="value">The share of a row, in [0, 1]; null for a gap.</param>
    /// <param name="decimals">Decimals shown, in [0, 10].</param>
    public TableOf<T> Percent(string name, Func<T, double?> value, int decimals = 0) =>
        With(new TableColumn(name, "%", decimals), row => value(row) * 100);

    /// <summary>With a sentence below the table.</summary>
    /// <param name="note">How to read it, or what a mark means.</param>
    public TableOf<T> Note(string note) => new(_caption, _rows, _columns, note);

    /// <summary>The table.</summary>
    public Table ToTable() => new(
        _caption,
        [.. _columns.Select(c => c.Column)],
        [.. _rows.Select(row => (IReadOnlyList<object?>)[.. _columns.Select(c => c.Value(row))])]) { Note = _note };

    private TableOf<T> With(TableColumn column, Func<T, object?> value) => new(_caption, _rows, [.. _columns, (column, value)], _note);
}
