using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace SplitBatch.Trials.Files;

/// <summary>
/// A CSV file with a header row, as a spreadsheet saves it: comma, semicolon or tab between values, with or without a
/// byte-order mark, with rows that start with # as remarks. A header such as <c>amount [g]</c> names a column and its unit.
/// </summary>
internal sealed class CsvTable
{
    private static readonly string[] Delimiters = [";", "\t", ","];

    private readonly Dictionary<string, CsvColumn> columns = new(StringComparer.OrdinalIgnoreCase);

    private CsvTable(string file, string delimiter, DecimalMark mark, FaultList faults)
    {
        File = file;
        Delimiter = delimiter;
        Mark = mark;
        Faults = faults;
    }

    /// <summary>The file's name within the trial folder.</summary>
    public string File { get; }

    /// <summary>What stands between values: a comma, a semicolon or a tab.</summary>
    public string Delimiter { get; }

    /// <summary>How the file writes decimals.</summary>
    public DecimalMark Mark { get; }

    /// <summary>The columns in the file's order.</summary>
    public IReadOnlyList<CsvColumn> Columns { get; private set; } = [];

    /// <summary>The rows in the file's order; remarks and empty rows are left out.</summary>
    public IReadOnlyList<CsvRow> Rows { get; private set; } = [];

    internal FaultList Faults { get; }

    /// <summary>The line of the header; 1 where no remark stands before it.</summary>
    private int HeaderLine { get; set; } = 1;

    /// <summary>Reads a whole file; what is wrong with it goes to <paramref name="faults"/>.</summary>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="reader">The text.</param>
    /// <param name="faults">Takes what is wrong.</param>
    /// <param name="mark">How decimals are written; when null, a comma in a file whose values are separated by semicolons, else a
    /// point.</param>
    /// <param name="names">Names used in the file for the columns that are asked for: asked name to the file's header, without its
    /// unit.</param>
    public static CsvTable Read(
        string file, TextReader reader, FaultList faults, DecimalMark? mark = null, IReadOnlyDictionary<string, string>? names = null)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(faults);
        var text = reader.ReadToEnd().TrimStart('\uFEFF');
        var delimiter = DelimiterOf(text);
        var table = new CsvTable(file, delimiter, mark ?? (delimiter == ";" ? DecimalMark.Comma : DecimalMark.Point), faults);
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            faults.Add(new Fault(file, "The file holds NUL characters, so it is not plain text.")
            {
                Accepted = "a CSV file saved as UTF-8",
            });
            return table;
        }

        table.Load(text, delimiter, names ?? new Dictionary<string, string>());
        return table;
    }

    /// <summary>The column of that name, or null. Case and the unit in brackets do not count.</summary>
    public CsvColumn? Find(string name) => columns.GetValueOrDefault(name);

    /// <summary>Adds a fault for each of <paramref name="names"/> that has no column, and returns whether all are there.</summary>
    public bool Require(params ReadOnlySpan<string> names)
    {
        var complete = true;
        foreach (var name in names)
        {
            if (columns.ContainsKey(name)) continue;
            complete = false;
            var found = Columns.Count == 0 ? "no header" : "the columns " + string.Join(", ", Columns.Select(column => column.Header));
            Faults.Add(new Fault(File, $"The column \"{name}\" is missing; the file has {found}.")
            {
                Row = HeaderLine,
                Column = name,
                Accepted = $"a column headed {name}, with its unit in brackets where it has one",
                Suggestion = Nearest.Suggestion(name, Columns.Select(column => column.Name)),
            });
        }

        return complete;
    }

    internal static string DelimiterOf(string text)
    {
        var header = text.Split('\n')
            .FirstOrDefault(line => line.Trim(' ', '\r', ';', ',', '\t').Length > 0 && !line.TrimStart('"').StartsWith('#')) ?? "";
        return Delimiters.MaxBy(mark => header.Split(mark).Length)!;
    }

    private void Load(string text, string delimiter, IReadOnlyDictionary<string, string> names)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = delimiter,
            AllowComments = true,
            Comment = '#',
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
            BadDataFound = bad => Faults.Add(new Fault(File, "A quotation mark stands where none can be read.")
            {
                Row = bad.Context.Parser?.RawRow,
                Value = bad.Field,
                Accepted = "quotation marks around the whole value, doubled inside it",
            }),
        };
        using var parser = new CsvParser(new StringReader(text), configuration);
        var found = parser.Read();
        while (found && IsRemark(parser)) found = parser.Read();
        if (!found)
        {
            Faults.Add(new Fault(File, "The file is empty.") { Accepted = "a header row and one row for each record" });
            return;
        }

        HeaderLine = parser.RawRow;
        ReadHeader(parser.Record ?? [], names);
        var rows = new List<CsvRow>();
        while (parser.Read())
        {
            var values = parser.Record ?? [];
            if (values.All(string.IsNullOrWhiteSpace)) continue;
            var line = parser.RawRow;
            if (values.Length > Columns.Count && values.Skip(Columns.Count).Any(value => value.Length > 0))
            {
                Faults.Add(new Fault(File, $"The row has {values.Length} values under {Columns.Count} headers.")
                {
                    Row = line,
                    Accepted = "one value under each header",
                    Suggestion = delimiter == ","
                        ? "Put values that hold a comma in quotation marks, or separate the values with semicolons."
                        : null,
                });
                continue;
            }

            rows.Add(new CsvRow(this, line, values));
        }

        Rows = rows;
    }

    /// <summary>A remark that a spreadsheet put into quotation marks, before the header.</summary>
    private static bool IsRemark(CsvParser parser) => parser.Record is [var first, ..] && first.StartsWith('#');

    private void ReadHeader(string[] headers, IReadOnlyDictionary<string, string> names)
    {
        var asked = names.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.OrdinalIgnoreCase);
        var list = new List<CsvColumn>();
        foreach (var header in headers)
        {
            var column = CsvColumn.Parse(header, list.Count);
            if (asked.TryGetValue(column.Name, out var name) || asked.TryGetValue(header.Trim(), out name))
                column = column with { Name = name, AsWritten = header.Trim() };
            list.Add(column);
            if (column.Name.Length > 0 && !columns.TryAdd(column.Name, column))
            {
                Faults.Add(new Fault(File, $"Two columns are headed \"{column.Name}\".")
                {
                    Row = HeaderLine,
                    Column = header,
                    Accepted = "each header once",
                });
            }
        }

        Columns = list;
    }
}
