using System.Globalization;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Files;

/// <summary>Programs that add rows to one folder and are killed at random moments, without a chance to tidy up.</summary>
/// <param name="Kills">How many were killed.</param>
/// <param name="Acknowledged">Rows that were said to be on the disk; all of them were.</param>
/// <param name="Named">Kills that left remains of a row, all of them named.</param>
internal sealed record KillRun(int Kills, int Acknowledged, int Named)
{
    /// <summary>Kills so many writers, one after another, the files going on from kill to kill.</summary>
    /// <exception cref="InvalidDataException">An acknowledged row is not there, or one that is there is not as it was written.</exception>
    public static async Task<KillRun> Of(int kills, int seed)
    {
        var random = new Random(seed);
        var (acknowledgedInAll, named) = (0, 0);
        var folder = new TemporaryFolder();
        var acknowledged = new HashSet<string>();
        IReadOnlyList<string> remains = [];
        var next = Start(0);
        for (var kill = 0; kill < kills; kill++)
        {
            using var writer = next;
            await writer.Go();
            var ids = await writer.Kill(TimeSpan.FromMilliseconds(random.NextDouble() * 8));
            acknowledgedInAll += ids.Count;
            acknowledged.UnionWith(ids);
            var found = Check(folder.Path, acknowledged, $"kill {kill}, seed {seed}");
            named += found.Except(remains).Count();
            remains = found;
            if (kill % 30 == 29)
            {
                // A fresh file now and then, so that the first write of a file is met too.
                folder.Dispose();
                folder = new TemporaryFolder();
                acknowledged.Clear();
            }

            if (kill + 1 < kills) next = Start(kill + 1);
        }

        folder.Dispose();
        return new(kills, acknowledgedInAll, named);

        // Two in three write a few bytes at a time, as on a slow disk, so that a kill falls into the middle of a row; the others write as
        // the product does.
        LogWriter Start(int kill) =>
            new(folder.Path, $"{(kill % 2 == 0 ? "w" : "b")}{kill}", 0, 0, kill % 3 == 2 ? 0 : 12 + kill % 30, wanted: 1 + kill % 2);
    }

    /// <summary>
    /// Every row reads as it was written, every acknowledged one is there, and what else there is was cut short and is named; returns
    /// that.
    /// </summary>
    public static IReadOnlyList<string> Check(string folder, IReadOnlySet<string> acknowledged, string when)
    {
        var (found, faults, place) = (new HashSet<string>(), new FaultList(), new TrialFolder(folder));
        if (place.Holds("lab-returns.csv"))
        {
            var table = LogText.Table(LogFormat.LabReturns, place.ReadText("lab-returns.csv", faults)!, faults);
            foreach (var row in table.Rows)
            {
                var (name, number) = Parts(row.Text("id")!);
                foreach (var (column, value) in WriterProgram.Row(name, number)) Hold(row.Optional(column) == value,
                    $"row {name}-{number}, {column}: {row.Optional(column)}");
                Hold(found.Add($"{name}-{number}"), $"{name}-{number} stands twice");
            }
        }

        if (place.Holds("ballots-main.csv"))
        {
            var table = CsvTable.Read("ballots-main.csv", new StringReader(place.ReadText("ballots-main.csv", faults)!), faults);
            foreach (var ballot in BallotFile.Read(table))
            {
                var (name, number) = (ballot.Taster, ballot.Set!.Value - 1);
                Hold(ballot with { Row = null } == WriterProgram.Ballot(name, number), $"ballot {ballot}");
                Hold(found.Add($"{name}-{number}"), $"{name}-{number} stands twice");
            }
        }

        Hold(acknowledged.IsSubsetOf(found), $"lost {string.Join(", ", acknowledged.Except(found))}");
        Hold(faults.All(fault => fault.Problem.StartsWith("The last row was cut short", StringComparison.Ordinal)),
            string.Join("; ", faults));
        return [.. faults.Select(fault => fault.ToString())];

        void Hold(bool so, string what)
        {
            if (!so) throw new InvalidDataException($"{when}: {what}");
        }
    }

    private static (string Name, int Number) Parts(string id)
    {
        var at = id.IndexOf('-', StringComparison.Ordinal);
        return (id[..at], int.Parse(id[(at + 1)..], CultureInfo.InvariantCulture));
    }
}
