using System.Text;
using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Files;

/// <summary>A file of a trial that something is written to.</summary>
/// <param name="What">What it is, in words.</param>
/// <param name="File">Its name.</param>
/// <param name="Before">What it holds before; null where it is not there.</param>
/// <param name="Write">Writes to it.</param>
internal sealed record WrittenFile(string What, string File, byte[]? Before, Action<TrialFolder> Write)
{
    /// <summary>Whether writing the same again is harmless: a document is there already, and a row of a log has its id.</summary>
    public bool HasIds => !File.StartsWith("ballots", StringComparison.Ordinal)
        && !File.EndsWith("-evening.csv", StringComparison.Ordinal);

    /// <summary>Every kind of file that people's data go into, in the trial of the amber ale.</summary>
    public static IReadOnlyList<WrittenFile> All(TrialFolder trial)
    {
        var ballot = new Ballot("T01", "148") { Session = 1, Set = 1, Comment = "grün, \"hoppy\"" };
        BatchEntry[] brewed =
        [
            BatchEntry.Measured("801", Side.A, "pH", 4.42, "pH", 0.05),
            BatchEntry.Measured("802", Side.B, "pH", 4.4, "pH", 0.05),
        ];
        LabResult[] returned =
        [
            new("R1", "S1", Analyte.Bitterness, 25.1),
            new("R2", "S2", Analyte.Bitterness, 26.4) { Method = "iso-octane – by hand" },
        ];
        var key = ServingKeyFile.Read(CsvTable.Read("k", new StringReader(trial.ReadText("serving-main.csv", [])!), []), seed: 2026)!;
        var (most, last) = LastLine(trial, "ballots-main.csv");
        return
        [
            new("ballots, the first", "ballots-main.csv", null, place => BallotFile.Append(place, "main", ballot)),
            new("ballots, one more", "ballots-main.csv", most, place => BallotFile.Append(place, "main", ballot)),
            new("ballots, saved by a spreadsheet", "ballots-main.csv", AsSpreadsheet(most),
                place => BallotFile.Append(place, "main", ballot)),
            new("ballots, after a kill", "ballots-main.csv", [.. most, 0, .. Encoding.UTF8.GetBytes(last[1..^3])],
                place => BallotFile.Append(place, "main", ballot)),
            Added("ratings", "ratings-evening.csv"),
            Added("comments", "comments-evening.csv"),
            new("batch log, two entries", "batch-log.csv", LastLine(trial, "batch-log.csv").Before,
                place => new BatchLogFile(place.Path).Append(brewed)),
            new("lab return, the first", "lab-returns.csv", null,
                place => new LabReturnLog(place.Path, DecimalMark.Point).Append(returned)),
            new("lab return, two more", "lab-returns.csv", Encoding.UTF8.GetBytes(string.Join(';', LogFormat.LabReturns.Columns) + "\r\n"),
                place => new LabReturnLog(place.Path, DecimalMark.Point).Append(returned)),
            new("serving key", "serving-main.csv", null, place =>
                NewFile.TryMake(place.PathOf("serving-main.csv"), Encoding.UTF8.GetBytes(ServingKeyFile.Write(key)))),
            new("a document made once", "seal-1.json", null,
                place => NewFile.TryMake(place.PathOf("seal-1.json"), "{ \"sealed\": \"2026-04-20\" }\n"u8)),
        ];

        WrittenFile Added(string what, string file)
        {
            var (before, line) = LastLine(trial, file);
            return new(what, file, before, place => new Appender(place.PathOf(file)).Append(_ => [line]));
        }
    }

    private static (byte[] Before, string Line) LastLine(TrialFolder trial, string file)
    {
        var text = System.IO.File.ReadAllText(trial.PathOf(file)).TrimEnd('\n');
        var at = text.LastIndexOf('\n') + 1;
        return (Encoding.UTF8.GetBytes(text[..at]), text[at..]);
    }

    private static byte[] AsSpreadsheet(byte[] bytes) =>
        Encoding.UTF8.GetBytes("\uFEFF" + Encoding.UTF8.GetString(bytes).TrimEnd('\n').Replace("\n", "\r\n", StringComparison.Ordinal));
}
