using System.Globalization;
using System.Text;
using SplitBatch.Panel.Ballots;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Files;

/// <summary>
/// A program that adds rows until it ends or is killed. It says "ready", waits for a line, and says each row's id once the row is on the
/// disk. A name that starts with b writes ballots, any other lab results.
/// </summary>
internal static class WriterProgram
{
    public const string Word = "write";

    /// <summary>Runs it.</summary>
    /// <param name="args">The word, folder, name, first number, count (0 for no end), and bytes for each piece (0 for whole rows).</param>
    public static int Run(string[] args)
    {
        var (folder, name) = (args[1], args[2]);
        var numbers = args.Skip(3).Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var (first, count, piece) = (numbers[0], numbers[1], numbers[2]);
        using var output = Console.OpenStandardOutput();
        Say("ready");
        if (Console.In.ReadLine() is null) return 1;
        if (piece > 0) Disk.Here = new SlowDisk(piece);
        var log = new AppendLog(folder, LogFormat.LabReturns) { Patience = TimeSpan.FromSeconds(120) };
        for (var i = first; count == 0 || i < first + count; i++)
        {
            try
            {
                if (name[0] == 'b') BallotFile.Append(new TrialFolder(folder), "main", Ballot(name, i));
                else log.Append(Row(name, i));
                Say($"{name}-{i}");
            }
            catch (LogException error)
            {
                Say(error.Message);
                return 3;
            }

            // Longer than a waiting writer sleeps, so that another that wants its turn gets it.
            if (count > 0 && i % 25 == 24) Thread.Sleep(25);
        }

        return 0;

        // One write for one line, so that a kill leaves no half line behind.
        void Say(string line) => output.Write(Encoding.UTF8.GetBytes(line + "\n"));
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

    /// <summary>The ballot of a number.</summary>
    public static Ballot Ballot(string name, int number) => new(name, $"{100 + number % 900}")
    {
        Set = number + 1,
        Comment = $"{name}-{number}: grün, \"hoppy\" – and dry, I think",
    };
}
