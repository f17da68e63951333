using System.Globalization;
using System.Text;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch;

/// <summary>
/// A writer of log rows that tests start as a program of its own. Arguments: folder, name, first number, count (0 for no end), bytes per
/// piece (0 for whole rows); or "ballots", folder, first, count, for <see cref="Trials.BallotWriter"/>; or "seals", folder, key folder, step, for <see cref="Trials.Seals.SealWriter"/>. It says "ready", waits for a line, and says each id once its receipt is there.
/// </summary>
internal static class Program
{
    public static int Main(string[] args)
    {
        if (args is [Trials.BallotWriter.Word, var folder, var from, var many])
            return Trials.BallotWriter.Run(folder, int.Parse(from, CultureInfo.InvariantCulture), int.Parse(many, CultureInfo.InvariantCulture));
        if (args is [Trials.Seals.SealWriter.Word, var trial, var keys, var step]) return Trials.Seals.SealWriter.Run(trial, keys, int.Parse(step, CultureInfo.InvariantCulture));
        if (args.Length != 5) return 2;
        var numbers = args.Skip(2).Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var (first, count, piece) = (numbers[0], numbers[1], numbers[2]);
        using var output = Console.OpenStandardOutput();
        Say("ready");
        if (Console.In.ReadLine() is null) return 1;
        if (piece > 0) Disk.Here = new SlowDisk(piece);
        var log = new AppendLog(args[0], LogFormat.LabReturns) { Patience = TimeSpan.FromSeconds(120) };
        for (var i = first; count == 0 || i < first + count; i++)
        {
            Say(log.Append(Row(args[1], i)).Id);

            // Longer than a waiting writer sleeps, so that another that wants its turn gets it.
            if (count > 0 && i % 25 == 24) Thread.Sleep(25);
        }

        return 0;

        // One write for one line, so that a kill leaves no half line behind.
        void Say(string line) => output.Write(Encoding.ASCII.GetBytes(line + "\n"));
    }

    /// <summary>The row of a number: every cell follows from it, so that a damaged row can be told.</summary>
    public static Dictionary<string, string> Row(string name, int number) => new()
    {
        ["id"] = $"{name}-{number}",
        ["received"] = "2026-04-02",
        ["sample"] = $"S{number % 7}",
        ["analyte"] = "bitterness",
        ["replicate"] = "1",
        ["value"] = (20 + number % 100 / 10.0).ToString(CultureInfo.InvariantCulture),
        ["unit"] = "BU",
        ["method"] = $"iso-octane, run \"{number}\", with a comma and a dash – as people write",
        ["lab"] = $"laboratory {number}",
    };
}
