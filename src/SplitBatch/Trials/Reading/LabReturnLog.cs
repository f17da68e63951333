using System.Globalization;
using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>The log of what the laboratory returned: <c>lab-returns.csv</c>.</summary>
internal sealed class LabReturnLog
{
    /// <summary>The log of a trial folder; the file may not be there yet.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <param name="folder">The trial folder.</param>
    /// <param name="mark">How the file writes decimals; when null, told from what separates the values.</param>
    public LabReturnLog(string folder, DecimalMark? mark = null) => Log = new AppendLog(folder, LogFormat.LabReturns) { Mark = mark };

    /// <summary>The file behind it.</summary>
    public AppendLog Log { get; }

    /// <summary>
    /// Adds one result. Logging the same result again is harmless. Of an absorbance the log keeps the readings, and its bitterness
    /// follows from them each time the log is read.
    /// </summary>
    /// <exception cref="LogException">The id is taken by another result, a correction is incomplete, or the file cannot be added
    /// to.</exception>
    public LogReceipt Append(LabResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Log.Append(Cells(result));
    }

    /// <summary>Adds several results, all of them or none, however many in about the time of one.</summary>
    /// <exception cref="LogException">One of them could not be logged; nothing was written.</exception>
    public IReadOnlyList<LogReceipt> Append(IEnumerable<LabResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        return Log.AppendAll(results.Select(Cells));
    }

    /// <summary>Reads the results from a table with the columns of this log; what is wrong goes to the table's faults.</summary>
    /// <param name="table">The table.</param>
    /// <param name="key">Which half each sample is, where the trial says so; a row that says otherwise is a fault.</param>
    /// <returns>The rows that can be used, in the order logged, corrections included.</returns>
    public static IReadOnlyList<LabResult> Read(CsvTable table, IReadOnlyDictionary<string, Side>? key = null)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!table.Require([.. LogFormat.LabReturns.Needed])) return [];
        var results = new List<(LabResult Result, CsvRow Row)>();
        foreach (var row in table.Rows)
        {
            if (ReadRow(row, table) is { } result) results.Add((result, row));
        }

        var history = new LogHistory<LabResult>(results.Select(pair => pair.Result));
        foreach (var problem in history.Problems) RowOf(problem.Row).Refuse(problem.Column, problem.Problem, null);
        var contradictions = Contradictions(history.InForce, key).ToHashSet();
        foreach (var row in contradictions)
        {
            RowOf(row).Refuse("beer", $"Sample {row.Sample} is said to be the other half elsewhere.",
                "the same half in every row of a sample and in trial.json");
        }

        return [.. results.Select(pair => pair.Result).Where(result => !contradictions.Contains(result))];

        CsvRow RowOf(LabResult result) => results.First(pair => ReferenceEquals(pair.Result, result)).Row;
    }

    private static Dictionary<string, string> Cells(LabResult result)
    {
        var reading = result.Reading;
        if (reading is not null && reading.PathMillimetres != 10)
        {
            throw new LogException(
                string.Create(CultureInfo.InvariantCulture,
                    $"The log keeps absorbances of a 10 mm cell, and this one was read in {reading.PathMillimetres} mm; log the "
                        + $"absorbance for 10 mm, {Printed.Chosen(reading.Absorbance * 10 / reading.PathMillimetres)}. Nothing "
                        + $"was logged."));
        }

        return new()
        {
            ["id"] = result.Id,
            ["received"] = result.Received?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            ["sample"] = result.Sample,
            ["beer"] = result.Beer?.ToString() ?? "",
            ["analyte"] = result.Analyte.Name,
            ["replicate"] = result.Replicate.ToString(CultureInfo.InvariantCulture),
            ["value"] = reading is null ? Number(result.GivenValue) : "",
            ["unit"] = reading is null ? result.GivenUnit : "",
            ["method"] = result.Method,
            ["lab"] = result.Laboratory,
            ["run"] = result.Run,
            ["absorbance"] = reading is null ? "" : Number(reading.Absorbance),
            ["blank"] = reading is null ? "" : Number(reading.Blank),
            ["dilution"] = reading is null ? "" : Number(reading.Dilution),
            ["who"] = result.Who,
            ["supersedes"] = result.Supersedes ?? "",
            ["reason"] = result.Reason ?? "",
        };
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static IEnumerable<LabResult> Contradictions(IEnumerable<LabResult> inForce, IReadOnlyDictionary<string, Side>? key)
    {
        var known = new Dictionary<string, Side>(key ?? new Dictionary<string, Side>(), StringComparer.OrdinalIgnoreCase);
        foreach (var result in inForce)
        {
            if (result.Beer is { } beer && !known.TryAdd(result.Sample, beer) && known[result.Sample] != beer) yield return result;
        }
    }

    private static LabResult? ReadRow(CsvRow row, CsvTable table)
    {
        var id = row.Text("id");
        var sample = row.Text("sample");
        var beer = row.Optional("beer") is null ? null : row.OneOf("beer", Sides.ByLetter);
        var name = row.Text("analyte");
        var replicate = row.OptionalWhole("replicate", 1, 1000) ?? 1;
        var received = row.OptionalDate("received");
        var result = row.Optional("absorbance") is null
            ? Value(row, table, id, sample, name, replicate)
            : Reading(row, id, sample, name, replicate);
        if (result is null) return null;
        if ((row.Optional("beer") is not null && beer is null) || (row.Optional("received") is not null && received is null)) return null;
        return result with
        {
            Beer = beer,
            Received = received,
            Method = row.Optional("method") ?? result.Method,
            Laboratory = row.Optional("lab") ?? "",
            Run = row.Optional("run") ?? "",
            Who = row.Optional("who") ?? "",
            Supersedes = row.Optional("supersedes"),
            Reason = row.Optional("reason"),
        };
    }

    private static LabResult? Value(CsvRow row, CsvTable table, string? id, string? sample, string? name, int replicate)
    {
        var unit = row.Optional("unit") ?? table.Find("value")?.Unit;
        if (row.Number("value") is not { } number || id is null || sample is null || name is null) return null;
        if (Analyte.Find(name) is not { } analyte)
        {
            if (unit is null)
            {
                row.Refuse("analyte", "The analyte is not one of the known ones, and the row names no unit.",
                    string.Join(", ", Analyte.Known.Select(known => known.Name)),
                    Nearest.Suggestion(name, Analyte.Known.Select(known => known.Name)));
                return null;
            }

            analyte = Analyte.Of(name, unit);
        }

        return row.Make("value", () => new LabResult(id, sample, analyte, number, unit, replicate));
    }

    /// <summary>A row with an absorbance in place of a value.</summary>
    private static LabResult? Reading(CsvRow row, string? id, string? sample, string? name, int replicate)
    {
        if (row.Optional("value") is not null)
        {
            row.Refuse("value", "The row has a value and an absorbance, from which another value could follow.",
                "one of the two: leave the value blank, and it is worked out from the absorbance");
            return null;
        }

        if (name is not null && !Analyte.Bitterness.Equals(Analyte.Find(name)))
        {
            row.Refuse("analyte", "An absorbance at 275 nm gives bitterness and nothing else.", Analyte.Bitterness.Name);
            return null;
        }

        var (absorbance, blank, dilution) =
            (row.OptionalNumber("absorbance"), row.OptionalNumber("blank"), row.OptionalNumber("dilution"));
        if (absorbance is not { } read || id is null || sample is null || name is null) return null;
        if ((row.Optional("blank") is not null && blank is null) || (row.Optional("dilution") is not null && dilution is null))
            return null;
        return row.Make("absorbance", () => new AbsorbanceReading(read, blank ?? 0, dilution ?? 1).AsResult(id, sample, replicate));
    }
}
