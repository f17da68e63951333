using System.Globalization;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// How a laboratory's own file is read: which of its columns is which, and what its words mean. Written once in trial.json, under
/// <c>lab.imports</c>.
/// </summary>
/// <remarks>
/// A file of one's own instrument has a column <c>absorbance</c> (275 nm, 10 mm cell) in place of <c>value</c>, and may have <c>blank</c>
/// and
/// <c>dilution</c>; either may hold for every row under <c>always</c>. Such a file holds nothing but bitterness.
/// </remarks>
/// <example>
/// <code>
/// "imports": [ { "file": "incoming/lab-return.csv",
///   "columns": { "report": "report", "sample": "Probe", "analyte": "Analyse", "value": "Ergebnis" },
///   "words": { "Bittereinheiten": "bitterness", "BE": "BU" }, "always": { "lab": "our laboratory" } } ]
/// </code>
/// </example>
internal sealed record LabImport
{
    private static readonly string[] Askable = ["report", "received", "sample", "analyte", "replicate", "value", "unit", "method", "lab",
        "run", "absorbance", "blank", "dilution"];
    private static readonly string[] NeededIfLong = ["sample", "analyte", "value"];
    private static readonly string[] NeededIfWide = ["sample"];
    private static readonly string[] NeededIfRead = ["sample", "absorbance"];

    /// <summary>The file's name within the trial folder, as <c>incoming/lab-return.csv</c>.</summary>
    public required string File { get; init; }

    /// <summary>This log's name for a column to the file's header. Columns with the same name need no entry.</summary>
    public IReadOnlyDictionary<string, string> Columns { get; init; } = new Dictionary<string, string>();

    /// <summary>For a file with one column for each analyte: the analyte to the file's header. Empty for one result a row.</summary>
    public IReadOnlyDictionary<string, string> Analytes { get; init; } = new Dictionary<string, string>();

    /// <summary>The file's words for analytes and units to this log's.</summary>
    public IReadOnlyDictionary<string, string> Words { get; init; } = new Dictionary<string, string>();

    /// <summary>Values that hold for every row, for columns that the file does not have.</summary>
    public IReadOnlyDictionary<string, string> Always { get; init; } = new Dictionary<string, string>();

    /// <summary>How the file writes decimals; null to tell it from the numbers themselves.</summary>
    public DecimalMark? Decimals { get; init; }

    /// <summary>
    /// The results in the file's text; what is wrong goes to <paramref name="faults"/>, and nothing should be logged then.
    /// </summary>
    /// <param name="text">The whole file.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public IReadOnlyList<LabResult> Read(string text, FaultList faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(faults);
        var names = Columns.Concat(Analytes.Select(pair => KeyValuePair.Create(Wide(pair.Key), pair.Value)))
            .ToDictionary(pair => pair.Key, pair => pair.Value);
        var table = CsvTable.Read(File, new StringReader(text), faults, Decimals, names);
        var holdsReadings = Analytes.Count == 0 && table.Find("absorbance") is not null;
        var needed = (holdsReadings ? NeededIfRead : Analytes.Count == 0 ? NeededIfLong : NeededIfWide)
            .Where(name => !Always.ContainsKey(name)).Concat(Analytes.Keys.Select(Wide));
        if (!Require(table, needed) || MarkOf(table, faults) is not { } mark) return [];
        var counts = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var results = new List<LabResult>();
        foreach (var row in table.Rows)
        {
            if (holdsReadings)
            {
                if (Reading(row, mark, counts) is { } read) results.Add(read);
                continue;
            }

            if (Analytes.Count == 0)
            {
                if (Result(row, table, mark, "value", Cell(row, "analyte"), Cell(row, "unit") ?? table.Find("value")?.Unit,
                    counts) is { } result) results.Add(result);
                continue;
            }

            foreach (var analyte in Analytes.Keys.Where(name => row.Optional(Wide(name)) is not null))
            {
                if (Result(row, table, mark, Wide(analyte), analyte, table.Find(Wide(analyte))?.Unit ?? UnitInHeader(Analytes[analyte]),
                    counts) is { } result) results.Add(result);
            }
        }

        return results;
    }

    internal static LabImport? FromJson(JsonSection json)
    {
        if (json.Text("file", "the file's name, as \"incoming/lab-return.csv\"") is not { } file) return null;
        var columns = json.Map("columns");
        foreach (var name in columns.Keys.Where(name => !Askable.Contains(name)))
        {
            json.Refuse($"columns.{name}", "The log has no such column.", string.Join(", ", Askable),
                suggestion: Nearest.Suggestion(name, Askable));
        }

        var decimals = json.OptionalOneOf("decimals",
            new Dictionary<string, DecimalMark> { ["point"] = DecimalMark.Point, ["comma"] = DecimalMark.Comma });
        return new LabImport { File = file, Columns = columns, Analytes = json.Map("analytes"), Words = json.Map("words"),
            Always = json.Map("always"), Decimals = decimals };
    }

    private static bool Require(CsvTable table, IEnumerable<string> names)
    {
        var complete = true;
        foreach (var name in names) complete &= table.Require(name);
        return complete;
    }

    private DecimalMark? MarkOf(CsvTable table, FaultList faults)
    {
        if (Decimals is { } told) return told;
        var columns = Analytes.Count == 0 ? ["value", "absorbance", "blank", "dilution"] : Analytes.Keys.Select(Wide);
        var proved = IncomingNumber.MarkOf(columns.SelectMany(column => table.Rows.Select(row => row.Optional(column)).OfType<string>()),
            out var contradiction);
        if (contradiction is not { } pair) return proved ?? table.Mark;
        faults.Add(new Fault(File, $"Decimals are written in two ways: {pair.Point} and {pair.Comma}.")
        {
            Accepted = "one way throughout the file, or \"decimals\": \"point\" or \"comma\" under lab.imports in trial.json",
        });
        return null;
    }

    private LabResult? Result(CsvRow row, CsvTable table, DecimalMark mark, string column, string? name, string? unit,
        Dictionary<string, int> counts)
    {
        if (Sample(row) is not { } sample || (row.Optional(column) ?? row.Text(column)) is not { } text) return null;
        if (Number(row, column, text, mark) is not { } value) return null;
        if (name is null || Analyte.Find(Meaning(name)) is not { } analyte)
        {
            row.Refuse("analyte", $"The analyte {name} is not known.", string.Join(", ", Analyte.Known.Select(known => known.Name)),
                "Say what the laboratory's word means under \"words\" in trial.json.");
            return null;
        }

        if (Place(row, sample, analyte, counts) is not { } place) return null;
        return row.Make(column, () => new LabResult(place.Id, sample, analyte, value, unit is null ? null : Meaning(unit), place.Replicate)
        {
            Received = place.Received,
            Method = Cell(row, "method") ?? "",
            Laboratory = Cell(row, "lab") ?? "",
            Run = Cell(row, "run") ?? "",
        });
    }

    private LabResult? Reading(CsvRow row, DecimalMark mark, Dictionary<string, int> counts)
    {
        if (Sample(row) is not { } sample || row.Text("absorbance") is not { } text
            || Number(row, "absorbance", text, mark) is not { } absorbance) return null;
        if (Beside("blank", 0) is not { } blank || Beside("dilution", 1) is not { } dilution) return null;
        if (Place(row, sample, Analyte.Bitterness, counts) is not { } place) return null;
        return row.Make("absorbance",
            () => new AbsorbanceReading(absorbance, blank, dilution).AsResult(place.Id, sample, place.Replicate)) is { } read
            ? read with { Received = place.Received, Method = Cell(row, "method") ?? read.Method, Laboratory = Cell(row, "lab") ?? "",
                Run = Cell(row, "run") ?? "" }
            : null;

        double? Beside(string column, double otherwise) => row.Optional(column) is { } own
            ? Number(row, column, own, mark)
            : Always.GetValueOrDefault(column) is { } always ? Number(row, column, always, Decimals ?? DecimalMark.Point) : otherwise;
    }

    private string? Sample(CsvRow row) => Cell(row, "sample") ?? row.Text("sample");

    private static double? Number(CsvRow row, string column, string text, DecimalMark mark)
    {
        if (IncomingNumber.TryRead(text, mark, out var value, out var problem)) return value;
        row.Refuse(column, problem, $"a number with a decimal {(mark == DecimalMark.Point ? "point" : "comma")}",
            "If the file writes decimals otherwise, say so as \"decimals\" under lab.imports in trial.json.");
        return null;
    }

    /// <summary>
    /// Which replicate a row is, under which id, and when it arrived; null where the row says so in a way that cannot be read.
    /// </summary>
    private (string Id, int Replicate, DateOnly? Received)? Place(CsvRow row, string sample, Analyte analyte,
        Dictionary<string, int> counts)
    {
        var report = Cell(row, "report") ?? Path.GetFileNameWithoutExtension(File);
        var replicate = counts[$"{report}/{sample}/{analyte.Name}"] = counts.GetValueOrDefault($"{report}/{sample}/{analyte.Name}") + 1;
        if (Cell(row, "replicate") is { } told
            && (!int.TryParse(told, NumberStyles.None, CultureInfo.InvariantCulture, out replicate) || replicate < 1))
        {
            row.Refuse("replicate", "The value is not a whole number of 1 or more.", "1, 2, 3 ...");
            return null;
        }

        DateOnly? received = null;
        if (Cell(row, "received") is { } date)
        {
            if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                row.Refuse("received", "The date cannot be read without guessing the order of day and month.",
                    "year-month-day, as 2026-03-14");
                return null;
            }

            received = day;
        }

        return ($"{report}/{sample}/{analyte.Name}/{replicate}", replicate, received);
    }

    private string? Cell(CsvRow row, string column) => row.Optional(column) ?? Always.GetValueOrDefault(column);

    private string Meaning(string word) => Words.GetValueOrDefault(word.Trim(), word);

    private static string? UnitInHeader(string header) => CsvColumn.Parse(header, 0).Unit;

    private static string Wide(string analyte) => $"value of {analyte}";
}
