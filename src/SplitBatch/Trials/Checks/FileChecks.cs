using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials.Checks;

/// <summary>
/// A column whose header is nearly one that is read, and whose values are therefore passed over. Columns of one's own are fine.
/// </summary>
internal sealed class MisspeltColumn : ITrialCheck
{
    private static readonly Dictionary<string, IReadOnlyList<string>> Columns = new()
    {
        [HopLotReader.FileName] = HopLotReader.Columns,
        [ChargeReader.FileName] = ChargeReader.Columns,
        [LogFormat.BatchLog.FileName] = LogFormat.BatchLog.Columns,
        [LogFormat.LabReturns.FileName] = LogFormat.LabReturns.Columns,
    };

    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var table in facts.Tables)
        {
            var known = Columns.GetValueOrDefault(table.File)
                ?? (table.File.StartsWith("ballots-", StringComparison.Ordinal) ? BallotFile.Columns : []);
            var free = known.Where(name => table.Find(name) is null).ToList();
            foreach (var column in table.Columns.Where(column => !known.Contains(column.Name, StringComparer.OrdinalIgnoreCase)))
            {
                if (Nearest.Suggestion(column.Name, free) is not { } suggestion) continue;
                yield return new Fault(table.File, "No column of this name is read, so its values are passed over.")
                {
                    Column = column.Header,
                    Accepted = string.Join(", ", known),
                    Suggestion = suggestion,
                    Severity = Severity.Warning,
                };
            }
        }
    }
}

/// <summary>A file in the folder that is not read: a spreadsheet's own format, or a CSV file by a name that is nobody's.</summary>
internal sealed class StrayFile : ITrialCheck
{
    private static readonly string[] Spreadsheets = [".xlsx", ".xls", ".ods", ".numbers"];

    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        string[] known =
        [
            HopLotReader.FileName, ChargeReader.FileName, LogFormat.BatchLog.FileName, LogFormat.LabReturns.FileName,
            PanelEvent.Log.FileName,
            .. facts.Content.Panels
                .SelectMany(
                    panel => new[] { ServingKeyFile.NameOf(panel.Name), BallotFile.NameOf(panel.Name), $"ratings-{panel.Name}.csv",
                        $"comments-{panel.Name}.csv", CodeBook.NameOf(panel.Name) }),
        ];
        foreach (var file in facts.Files)
        {
            if (Spreadsheets.Contains(Path.GetExtension(file), StringComparer.OrdinalIgnoreCase))
            {
                yield return Stray(file, "This is a spreadsheet's own format, which is not read.",
                    "Save the sheet as CSV UTF-8 under the name of the file that it belongs to.");
            }
            else if (file.EndsWith(".torn", StringComparison.OrdinalIgnoreCase))
            {
                yield return new Fault(file, "Rows that were cut short while they were written are kept here; they were never "
                    + "acknowledged.")
                {
                    Accepted = "no such file, once its rows are known to stand in the other",
                    Suggestion = $"Look whether each was entered again in {Path.GetFileNameWithoutExtension(file)}, then delete "
                        + $"this file.",
                    Severity = Severity.Warning,
                };
            }
            else if (file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && !IsRead(file))
            {
                yield return Stray(file, "No file of this name is read.",
                    Nearest.Suggestion(file, known.Where(name => !facts.Files.Contains(name)))
                        ?? "Files as they arrived from elsewhere go into the folder incoming.");
            }
        }

        // Spelt otherwise, a file is read where no file of the exact name is there.
        bool IsRead(string file) =>
            known.FirstOrDefault(name => string.Equals(name, file, StringComparison.OrdinalIgnoreCase)) is { } meant
                && (meant == file || !facts.Files.Contains(meant));

        Fault Stray(string file, string problem, string suggestion) =>
            new(file, problem) { Accepted = string.Join(", ", known), Suggestion = suggestion, Severity = Severity.Warning };
    }
}
