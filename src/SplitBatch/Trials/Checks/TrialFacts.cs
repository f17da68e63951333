using System.Globalization;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Checks;

/// <summary>What the checks look at: what the folder holds, and the tables it was read from, so that a warning can name its row.</summary>
/// <param name="content">What was read.</param>
/// <param name="tables">The files it was read from.</param>
/// <param name="files">The names of all files in the folder.</param>
/// <param name="today">The day of the check.</param>
internal sealed class TrialFacts(TrialContent content, IReadOnlyList<CsvTable> tables, IReadOnlyList<string> files, DateOnly today)
{
    /// <summary>What was read.</summary>
    public TrialContent Content => content;

    /// <summary>The files it was read from.</summary>
    public IReadOnlyList<CsvTable> Tables => tables;

    /// <summary>The names of all files in the folder itself.</summary>
    public IReadOnlyList<string> Files => files;

    /// <summary>The first day of the batch log; null before brewing.</summary>
    public DateOnly? Brewed => content.BatchLog?.Entries.Min(entry => entry.When);

    /// <summary>The day of the check.</summary>
    public DateOnly Today => today;

    /// <summary>A warning about the row in which a column holds a key.</summary>
    public Fault InRow(string file, string keyColumn, string key, string column, string problem, string? accepted,
        string? suggestion = null)
    {
        var row = tables.FirstOrDefault(table => table.File == file)?.Rows
            .FirstOrDefault(candidate => string.Equals(candidate.Optional(keyColumn), key, StringComparison.OrdinalIgnoreCase));
        return new Fault(file, problem)
        {
            Row = row?.Line,
            Column = tables.FirstOrDefault(table => table.File == file)?.Find(column)?.Header ?? column,
            Value = row?.Optional(column),
            Accepted = accepted,
            Suggestion = suggestion,
            Severity = Severity.Warning,
        };
    }

    /// <summary>A warning about a value of a declared panel.</summary>
    public Fault InPanel(PanelRecord panel, string name, string? value, string problem, string? accepted, string? suggestion = null) =>
        new(TrialFolder.DescriptionFile, problem)
        {
            Column = $"panels[{content.Panels.ToList().IndexOf(panel)}].{name}",
            Value = value,
            Accepted = accepted,
            Suggestion = suggestion,
            Severity = Severity.Warning,
        };

    /// <summary>A day as files write it.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
