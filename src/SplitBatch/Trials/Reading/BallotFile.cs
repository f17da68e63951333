using System.Globalization;
using SplitBatch.Panel.Ballots;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// The ballots of a panel as a file, <c>ballots-main.csv</c>: one row per answer, typed at the bar or exported from a web form.
/// </summary>
public static class BallotFile
{
    /// <summary>The columns of a new file. A file that is read needs <c>taster</c> and <c>answer</c>; the others may be missing.</summary>
    public static IReadOnlyList<string> Columns { get; } =
        ["taster", "session", "set", "answer", "when", "confidence", "knew variable", "brewer", "late", "preferred", "comment"];

    /// <summary>Every column that is read.</summary>
    internal static IReadOnlyList<string> Known { get; } = [.. Columns, "panel", "protocol"];

    private static readonly Dictionary<string, bool> YesOrNo = new(StringComparer.OrdinalIgnoreCase)
    {
        ["yes"] = true, ["y"] = true, ["true"] = true, ["x"] = true, ["1"] = true, ["no"] = false, ["n"] = false, ["false"] = false,
        ["0"] = false, ["-"] = false,
    };

    /// <summary>The file of a panel's ballots.</summary>
    public static string NameOf(string panel) => $"ballots-{Guard.NotBlank(panel)}.csv";

    /// <summary>
    /// Every ballot of a file, in the file's order. No row is dropped: what cannot be read is a fault and stays blank in the ballot.
    /// A web form's own headers are mapped when the table is read (<see cref="CsvTable.Read"/>, names).
    /// </summary>
    /// <param name="table">The file.</param>
    /// <param name="words">A form's own words for yes, no and the like; null for none.</param>
    internal static IReadOnlyList<Ballot> Read(CsvTable table, IReadOnlyDictionary<string, string>? words = null)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!table.Require("taster", "answer")) return [];
        Ballot[] ballots = [.. table.Rows.Select(row => ReadRow(row, words ?? new Dictionary<string, string>()))];
        foreach (var (what, values) in new[] { ("protocol", ballots.Select(ballot => ballot.Protocol)),
            ("panel", ballots.Select(ballot => ballot.Panel)) })
        {
            var counts = values.OfType<string>().CountBy(value => value, StringComparer.OrdinalIgnoreCase).ToArray();
            if (counts.Length < 2) continue;
            string list = string.Join(", ",
                counts.Select(count => string.Create(CultureInfo.InvariantCulture, $"{count.Key} {count.Value}")));
            table.Faults
                .Add(new Fault(table.File, $"Ballots of more than one {what} stand in one file: {list}. Only those of the panel that is "
                    + $"scored are counted; the others are kept.")
                {
                    Column = what,
                    Accepted = $"one {what} in each file",
                    Severity = Severity.Warning,
                });
        }
        return ballots;
    }

    /// <summary>Adds one ballot to a panel's file, which is made where it is not there yet. Several people may do so at once.</summary>
    /// <param name="folder">The trial folder.</param>
    /// <param name="panel">The panel's name.</param>
    /// <param name="ballot">The ballot; a blank answer is kept as such.</param>
    /// <exception cref="LogException">Someone else keeps the file for too long, or it has no column for a value that the ballot
    /// holds.</exception>
    internal static void Append(TrialFolder folder, string panel, Ballot ballot)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(ballot);
        var file = NameOf(panel);
        new Appender(folder.PathOf(file)).Append(bytes => Addition(file, Appender.Text(file, bytes), ballot));
    }

    /// <summary>The lines that add a ballot to a file's text.</summary>
    internal static IReadOnlyList<string> Addition(string file, string text, Ballot ballot)
    {
        var cells = CellsOf(ballot);
        if (string.IsNullOrWhiteSpace(text)) return [string.Join(',', Columns), CsvText.Row(file, Columns, ',', cells)];
        var table = CsvTable.Read(file, new StringReader(text), []);
        return [CsvText.Row(file, [.. table.Columns.Select(column => column.Name)], table.Delimiter[0], cells)];
    }

    private static Dictionary<string, string> CellsOf(Ballot ballot)
    {
        var cells = new Dictionary<string, string> { ["taster"] = ballot.Taster, ["answer"] = ballot.Answer };
        Put("panel", ballot.Panel);
        Put("protocol", ballot.Protocol);
        Put("session", ballot.Session?.ToString(CultureInfo.InvariantCulture));
        Put("set", ballot.Set?.ToString(CultureInfo.InvariantCulture));
        Put("when", ballot.When?.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));
        Put("confidence", ballot.Confidence);
        Put("knew variable", ballot.KnewVariable ? "yes" : null);
        Put("brewer", ballot.IsBrewer ? "yes" : null);
        Put("late", ballot.IsLate ? "yes" : null);
        Put("preferred", ballot.Preferred);
        Put("comment", ballot.Comment);
        return cells;

        void Put(string column, string? value)
        {
            if (!string.IsNullOrWhiteSpace(value)) cells[column] = value;
        }
    }

    private static Ballot ReadRow(CsvRow row, IReadOnlyDictionary<string, string> words) =>
        new(row.Text("taster") ?? "", Plain(row.Optional("answer"), words) ?? "")
        {
            Row = row.Line,
            Panel = row.Optional("panel"),
            Protocol = row.Optional("protocol"),
            Session = row.OptionalWhole("session", 1, 1000),
            Set = row.OptionalWhole("set", 1, 100_000),
            When = Time(row),
            Confidence = row.Optional("confidence"),
            KnewVariable = Flag(row, "knew variable", words),
            IsBrewer = Flag(row, "brewer", words),
            IsLate = Flag(row, "late", words),
            Preferred = row.Optional("preferred"),
            Comment = row.Optional("comment"),
        };

    private static DateTimeOffset? Time(CsvRow row)
    {
        if (row.Optional("when") is not { } text) return null;
        if (TimeText.TryRead(text, out var time)) return time;
        row.Refuse("when", "The time cannot be read without guessing; the ballot is kept without it.",
            "year-month-day hour:minute, as 2026-03-14 20:15, with the zone after it where that matters", severity: Severity.Warning);
        return null;
    }

    private static bool Flag(CsvRow row, string column, IReadOnlyDictionary<string, string> words)
    {
        if (Plain(row.Optional(column), words) is not { } text) return false;
        if (YesOrNo.TryGetValue(text, out bool flag)) return flag;
        row.Refuse(column, "The answer is neither yes nor no, so it is taken as yes, which is the careful reading.", "yes, no or blank",
            severity: Severity.Warning);
        return true;
    }

    private static string? Plain(string? text, IReadOnlyDictionary<string, string> words) =>
        text is not null && words.TryGetValue(text.Trim(), out var plain) ? plain : text;
}
