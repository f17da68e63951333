using System.Globalization;
using UnitsNet;

namespace SplitBatch.Trials.Files;

/// <summary>
/// One row of a <see cref="CsvTable"/>. Each question names a column; an answer that cannot be given is null, and the reason
/// is added to the table's faults.
/// </summary>
internal sealed class CsvRow
{
    private readonly CsvTable table;
    private readonly string[] values;

    internal CsvRow(CsvTable table, int line, string[] values)
    {
        this.table = table;
        this.values = values;
        Line = line;
    }

    /// <summary>The line in the file; the first is 1.</summary>
    public int Line { get; }

    /// <summary>The text under a header, or null when the column is not there or the cell is blank.</summary>
    public string? Optional(string column) =>
        table.Find(column) is { } found && found.Index < values.Length && values[found.Index].Trim() is { Length: > 0 } text ? text : null;

    /// <summary>The text under a header; a blank is a fault.</summary>
    public string? Text(string column)
    {
        var text = Optional(column);
        if (text is null && table.Find(column) is not null) Refuse(column, "The value is missing.", "a value in every row");
        return text;
    }

    /// <summary>A number in [<paramref name="low"/>, <paramref name="high"/>]; a blank is a fault.</summary>
    public double? Number(string column, double low = double.MinValue, double high = double.MaxValue) =>
        Text(column) is null ? null : OptionalNumber(column, low, high);

    /// <summary>A number in [<paramref name="low"/>, <paramref name="high"/>], or null when the cell is blank.</summary>
    public double? OptionalNumber(string column, double low = double.MinValue, double high = double.MaxValue)
    {
        if (Optional(column) is not { } text) return null;
        var accepted = Range(low, high);
        if (!NumberText.TryRead(text, table.Mark, out var number, out var problem))
        {
            Refuse(column, problem, accepted);
            return null;
        }

        if (number >= low && number <= high) return number;
        Refuse(column, "The value is out of range.", accepted);
        return null;
    }

    /// <summary>A whole number in [<paramref name="low"/>, <paramref name="high"/>], or null when the cell is blank.</summary>
    public int? OptionalWhole(string column, int low = int.MinValue, int high = int.MaxValue)
    {
        if (OptionalNumber(column, low, high) is not { } number) return null;
        if (number == Math.Floor(number)) return (int)number;
        Refuse(column, "The value is not a whole number.", Range(low, high));
        return null;
    }

    /// <summary>A date written as 2026-03-14, or null when the cell is blank.</summary>
    public DateOnly? OptionalDate(string column)
    {
        if (Optional(column) is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        Refuse(column, "The date cannot be read without guessing the order of day and month.", "year-month-day, as 2026-03-14");
        return null;
    }

    /// <summary>A mass, in the unit that the header names; a blank is a fault.</summary>
    public Mass? Mass(string column) => Quantity(column, UnitText.Mass, UnitText.MassUnits);

    /// <summary>A volume, in the unit that the header names; a blank is a fault.</summary>
    public Volume? Volume(string column) => Quantity(column, UnitText.Volume, UnitText.VolumeUnits);

    /// <summary>A duration, in the unit that the header names; a blank is a fault.</summary>
    public Duration? Duration(string column) => Quantity(column, UnitText.Duration, UnitText.DurationUnits);

    /// <summary>A temperature, in the unit that the header names; a blank is a fault.</summary>
    public Temperature? Temperature(string column) => Quantity(column, UnitText.Temperature, UnitText.TemperatureUnits, double.MinValue);

    /// <summary>One of a fixed set of words; a blank is a fault.</summary>
    public T? OneOf<T>(string column, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(words);
        if (Text(column) is not { } text) return null;
        foreach (var (word, meaning) in words)
        {
            if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase)) return meaning;
        }

        Refuse(column, "The word is not known here.", string.Join(", ", words.Keys), Nearest.Suggestion(text, words.Keys));
        return null;
    }

    /// <summary>Which half, written A or B; a blank is a fault.</summary>
    public Side? Beer(string column = "beer") => OneOf(column, Sides.ByLetter);

    /// <summary>What <paramref name="make"/> returns; what it throws about its arguments becomes a fault of this row and column.</summary>
    public T? Make<T>(string column, Func<T> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        try
        {
            return make();
        }
        catch (ArgumentException error)
        {
            Refuse(column, FaultText.Of(error), null);
            return default;
        }
    }

    /// <summary>Adds a fault about the value under a header of this row.</summary>
    public void Refuse(string column, string problem, string? accepted, string? suggestion = null, Severity severity = Severity.Error) =>
        table.Faults.Add(new Fault(table.File, problem)
        {
            Row = Line,
            Column = table.Find(column)?.Header ?? column,
            Value = Optional(column),
            Accepted = accepted,
            Suggestion = suggestion,
            Severity = severity,
        });

    private static string Range(double low, double high) =>
        (low == double.MinValue || low == int.MinValue, high == double.MaxValue || high == int.MaxValue) switch
        {
            (true, true) => "a number",
            (false, true) => string.Create(CultureInfo.InvariantCulture, $"a number of {low} or more"),
            (true, false) => string.Create(CultureInfo.InvariantCulture, $"a number of {high} or less"),
            _ => string.Create(CultureInfo.InvariantCulture, $"a number between {low} and {high}"),
        };

    private T? Quantity<T>(string column, Func<double, string?, T?> make, string units, double low = 0)
        where T : struct
    {
        if (table.Find(column) is not { } found || Number(column, low) is not { } number) return null;
        if (make(number, found.Unit) is { } quantity) return quantity;
        Refuse(column, found.Unit is null ? "The header names no unit." : $"The unit \"{found.Unit}\" is not one for this column.",
            $"a header such as {found.Name} [unit], with one of {units}");
        return null;
    }
}
