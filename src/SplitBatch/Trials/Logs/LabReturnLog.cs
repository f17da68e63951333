using System.Globalization;
using SplitBatch.Lab;

namespace SplitBatch.Trials.Logs;

/// <summary>The log of what the laboratory returned: <c>lab-returns.csv</c>.</summary>
public sealed class LabReturnLog
{
    private static readonly Dictionary<string, Side> Sides = new() { ["A"] = Side.A, ["B"] = Side.B };

    /// <summary>The log of a trial folder; the file may not be there yet.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public LabReturnLog(string folder) => Log = new AppendLog(folder, LogFormat.LabReturns);

    /// <summary>The file behind it.</summary>
    public AppendLog Log { get; }

    /// <summary>Adds one result. Logging the same result again is harmless.</summary>
    /// <exception cref="LogException">The id is taken by another result, a correction is incomplete, or the file cannot be added to.</exception>
    public LogReceipt Append(LabResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Log.Append(new Dictionary<string, string>
        {
            ["id"] = result.Id,
            ["received"] = result.Received?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            ["sample"] = result.Sample,
            ["beer"] = result.Beer?.ToString() ?? "",
            ["analyte"] = result.Analyte.Name,
            ["replicate"] = result.Replicate.ToString(CultureInfo.InvariantCulture),
            ["value"] = result.GivenValue.ToString("R", CultureInfo.InvariantCulture),
            ["unit"] = result.GivenUnit,
            ["method"] = result.Method,
            ["lab"] = result.Laboratory,
            ["supersedes"] = result.Supersedes ?? "",
            ["reason"] = result.Reason ?? "",
        });
    }

    /// <summary>Adds several results, one after the other.</summary>
    /// <exception cref="LogException">One of them could not be logged; those before it are on the disk.</exception>
    public IReadOnlyList<LogReceipt> Append(IEnumerable<LabResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        return [.. results.Select(Append)];
    }

    /// <summary>Reads the results from a table with the columns of this log; what is wrong goes to the table's faults.</summary>
    /// <returns>The rows without a fault, in the order logged, corrections included.</returns>
    public static IReadOnlyList<LabResult> Read(CsvTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!table.Require([.. LogFormat.LabReturns.Needed])) return [];
        var results = new List<(LabResult Result, CsvRow Row)>();
        foreach (var row in table.Rows)
        {
            if (ReadRow(row, table) is { } result) results.Add((result, row));
        }

        foreach (var problem in new LogHistory<LabResult>(results.Select(pair => pair.Result)).Problems)
        {
            results.First(pair => ReferenceEquals(pair.Result, problem.Row)).Row.Refuse(problem.Column, problem.Problem, null);
        }

        return [.. results.Select(pair => pair.Result)];
    }

    private static LabResult? ReadRow(CsvRow row, CsvTable table)
    {
        var id = row.Text("id");
        var sample = row.Text("sample");
        var beer = row.Optional("beer") is null ? null : row.OneOf("beer", Sides);
        var name = row.Text("analyte");
        var unit = row.Optional("unit") ?? table.Find("value")?.Unit;
        var value = row.Number("value");
        var replicate = row.OptionalWhole("replicate", 1, 1000) ?? 1;
        var received = row.OptionalDate("received");
        if (id is null || sample is null || name is null || value is not { } number) return null;
        if ((row.Optional("beer") is not null && beer is null) || (row.Optional("received") is not null && received is null)) return null;
        if (Analyte.Find(name) is not { } analyte)
        {
            if (unit is null)
            {
                row.Refuse("analyte", "The analyte is not one of the known ones, and the row names no unit.", string.Join(", ", Analyte.Known.Select(known => known.Name)), Nearest.Suggestion(name, Analyte.Known.Select(known => known.Name)));
                return null;
            }

            analyte = Analyte.Of(name, unit);
        }

        return row.Make("value", () => new LabResult(id, sample, analyte, number, unit, replicate)
        {
            Beer = beer,
            Received = received,
            Method = row.Optional("method") ?? "",
            Laboratory = row.Optional("lab") ?? "",
            Supersedes = row.Optional("supersedes"),
            Reason = row.Optional("reason"),
        });
    }
}
