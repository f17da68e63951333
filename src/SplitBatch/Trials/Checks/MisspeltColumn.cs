using SplitBatch.Trials.Logs;

namespace SplitBatch.Trials.Checks;

/// <summary>A column whose header is nearly one that is read, and whose values are therefore passed over. Columns of one's own are fine.</summary>
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
            var known = Columns.GetValueOrDefault(table.File) ?? (table.File.StartsWith("ballots-", StringComparison.Ordinal) ? BallotFile.Columns : []);
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
