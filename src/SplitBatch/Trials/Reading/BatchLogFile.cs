using System.Globalization;
using SplitBatch.BrewDay;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>The log of what was measured and noted on brewing day and after: <c>batch-log.csv</c>.</summary>
internal sealed class BatchLogFile
{
    private static readonly Dictionary<string, int> Beers = new() { ["A"] = 0, ["B"] = 1, ["both"] = 2 };

    /// <summary>The log of a trial folder; the file may not be there yet.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <param name="folder">The trial folder.</param>
    /// <param name="mark">How the file writes decimals; when null, told from what separates the values.</param>
    public BatchLogFile(string folder, DecimalMark? mark = null) => Log = new AppendLog(folder, LogFormat.BatchLog) { Mark = mark };

    /// <summary>The file behind it.</summary>
    public AppendLog Log { get; }

    /// <summary>Adds one entry. Logging the same entry again is harmless.</summary>
    /// <exception cref="LogException">The id is taken by another entry, a correction is incomplete, or the file cannot be added
    /// to.</exception>
    public LogReceipt Append(BatchEntry entry) => Append([entry])[0];

    /// <summary>Adds several entries, all of them or none.</summary>
    /// <exception cref="LogException">One of them could not be logged; nothing was written.</exception>
    public IReadOnlyList<LogReceipt> Append(IEnumerable<BatchEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return Log.AppendAll(entries.Select(Cells));
    }

    private static Dictionary<string, string> Cells(BatchEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return new()
        {
            ["id"] = entry.Id,
            ["when"] = entry.When?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            ["who"] = entry.Who,
            ["beer"] = entry.Beer?.ToString() ?? "both",
            ["quantity"] = entry.Quantity,
            ["value"] = entry.Text,
            ["unit"] = entry.Unit?.Name ?? "",
            ["uncertainty"] = entry.Uncertainty?.ToString("R", CultureInfo.InvariantCulture) ?? "",
            ["method"] = entry.Method,
            ["supersedes"] = entry.Supersedes ?? "",
            ["reason"] = entry.Reason ?? "",
            ["note"] = entry.Note,
        };
    }

    /// <summary>Reads the entries from a table with the columns of this log; what is wrong goes to the table's faults.</summary>
    /// <returns>The rows without a fault, in the order logged, corrections included.</returns>
    public static BatchLog Read(CsvTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!table.Require([.. LogFormat.BatchLog.Needed])) return new BatchLog([]);
        var entries = new List<(BatchEntry Entry, CsvRow Row)>();
        foreach (var row in table.Rows)
        {
            if (ReadRow(row) is { } entry) entries.Add((entry, row));
        }

        var log = new BatchLog(entries.Select(pair => pair.Entry));
        foreach (var problem in log.History.Problems)
        {
            entries.First(pair => ReferenceEquals(pair.Entry, problem.Row)).Row.Refuse(problem.Column, problem.Problem, null);
        }

        return log;
    }

    private static BatchEntry? ReadRow(CsvRow row)
    {
        var id = row.Text("id");
        var beer = row.OneOf("beer", Beers);
        var quantity = row.Text("quantity");
        var text = row.Text("value");
        var unit = row.Optional("unit") ?? (string.Equals(quantity, "pH", StringComparison.OrdinalIgnoreCase) ? "pH" : null);
        var when = row.OptionalDate("when");
        if (id is null || beer is not { } half || quantity is null || text is null) return null;
        if (row.Optional("when") is not null && when is null) return null;
        Side? side = half == 2 ? null : (Side)half;
        BatchEntry? entry;
        if (unit is null)
        {
            entry = row.Make("value", () => BatchEntry.Noted(id, side, quantity, text));
        }
        else
        {
            var uncertainty = row.OptionalNumber("uncertainty", 0);
            if (row.Number("value") is not { } number || (row.Optional("uncertainty") is not null && uncertainty is null)) return null;
            entry = row.Make("value", () => BatchEntry.Measured(id, side, quantity, number, unit, uncertainty));
        }

        return entry is null ? null : entry with
        {
            When = when,
            Who = row.Optional("who") ?? "",
            Method = row.Optional("method") ?? "",
            Note = row.Optional("note") ?? "",
            Supersedes = row.Optional("supersedes"),
            Reason = row.Optional("reason"),
        };
    }
}
