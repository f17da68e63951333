using SplitBatch.Panel.Ballots;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// How a web form's export is read as ballots: which of its columns is which, and what its words mean. Written once in trial.json, as
/// <c>ballots</c> of the panel; the export stays as it came and can be replaced by a later one at any time.
/// </summary>
/// <example>
/// <code>
/// "ballots": { "file": "incoming/form.csv",
///   "columns": { "taster": "Your taster number", "answer": "Which cup is the odd one?", "when": "Timestamp" },
///   "words": { "Yes, I know": "yes", "No idea": "no" } }
/// </code>
/// </example>
internal sealed record BallotImport
{
    /// <summary>The file's name within the trial folder, as <c>incoming/form.csv</c>.</summary>
    public required string File { get; init; }

    /// <summary>The ballots' name for a column to the form's header. Columns with the same name need no entry.</summary>
    public IReadOnlyDictionary<string, string> Columns { get; init; } = new Dictionary<string, string>();

    /// <summary>The form's words to those of a ballot file: yes, no, A, not A, same, different.</summary>
    public IReadOnlyDictionary<string, string> Words { get; init; } = new Dictionary<string, string>();

    /// <summary>The ballots in the file's text; what cannot be read is a fault, and no row is dropped.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public IReadOnlyList<Ballot> Read(string text, FaultList faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(faults);
        var table = CsvTable.Read(File, new StringReader(text), faults, names: Columns);
        var missing = Columns.Where(pair => table.Find(pair.Key) is null).ToList();
        foreach (var (column, header) in missing)
        {
            faults.Add(new Fault(File, $"The form has no column \"{header}\", which trial.json names for {column}.")
            {
                Column = header,
                Accepted = string.Join(", ", table.Columns.Select(found => found.Header)),
                Suggestion = Nearest.Suggestion(header, table.Columns.Select(found => found.Header)),
            });
        }

        return missing.Count > 0 ? [] : BallotFile.Read(table, Words);
    }

    internal static BallotImport? FromJson(JsonSection json)
    {
        var file = json.Text("file", "the file's name, as \"incoming/form.csv\"");
        var columns = json.Map("columns");
        var words = json.Map("words");
        foreach (var name in columns.Keys.Where(name => !BallotFile.Known.Contains(name, StringComparer.OrdinalIgnoreCase)))
        {
            json.Refuse($"columns.{name}", "A ballot has no such column.", string.Join(", ", BallotFile.Known),
                suggestion: Nearest.Suggestion(name, BallotFile.Known));
        }

        return file is null ? null : new BallotImport { File = file, Columns = columns, Words = words };
    }
}
