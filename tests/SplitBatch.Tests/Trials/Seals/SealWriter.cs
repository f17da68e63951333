using System.Diagnostics;
using System.Globalization;
using Microsoft.Win32.SafeHandles;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// The test assembly, started as a program that takes a panel from its seal to its close, and ends itself by force at one step.
/// </summary>
internal static class SealWriter
{
    public const string Word = "seals";

    /// <summary>Runs the program, which ends itself at the step of this number; at none for 0.</summary>
    public static int Start(string folder, string keys, int step)
    {
        string[] arguments = [typeof(SealWriter).Assembly.Location, Word, folder, keys, step.ToString(CultureInfo.InvariantCulture)];
        using var process = Process.Start(new ProcessStartInfo("dotnet", arguments))!;
        process.WaitForExit();
        return process.ExitCode;
    }

    /// <summary>Everything from the seal to the close; each step may have been done before.</summary>
    public static int Run(string folder, string keys, int step)
    {
        if (step > 0) Disk.Here = new FatalDisk(step);
        var place = new TrialFolder(folder);
        if (!place.Holds("seal-1.json")) Trial.Open(folder).Seal(SealedFolder.At(0));
        var description = place.PathOf("trial.json");
        File.WriteAllText(description,
            File.ReadAllText(description).Replace("\"margin\": 0.25", "\"margin\": 0.3", StringComparison.Ordinal));
        if (!place.Holds("seal-2.json")) Trial.Open(folder).Amend("we thought again", SealedFolder.At(1));
        var trial = Trial.Open(folder).Serve(keyFolder: keys, clock: SealedFolder.At(2));
        var key = trial.KeyKeptIn(keys);
        var rows = key.Sets.Take(20).Select((set, i) => SealedFolder.Row(set, i < 16, i) + "\n");
        File.WriteAllText(place.PathOf("ballots-main.csv"), "taster,set,answer,when\n" + string.Concat(rows));
        Trial.Open(folder).Close(keyFolder: keys, clock: SealedFolder.At(6));
        return 0;
    }

    /// <summary>A disk at whose calls the program is ended: before the one of a number, or in the middle of it where it writes.</summary>
    private sealed class FatalDisk(int last) : Disk
    {
        private int reached;

        public override SafeFileHandle Open(string path, FileMode mode)
        {
            Reach();
            return base.Open(path, mode);
        }

        public override void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes, long at)
        {
            Reach();
            base.Write(file, bytes[..(bytes.Length / 2)], at);
            Flush(file);
            base.Write(file, bytes[(bytes.Length / 2)..], at + (bytes.Length / 2));
        }

        public override void Flush(SafeFileHandle file)
        {
            Reach();
            base.Flush(file);
        }

        public override void Move(string from, string to)
        {
            Reach();
            base.Move(from, to);
            Reach();
        }

        private void Reach()
        {
            if (++reached == last) Process.GetCurrentProcess().Kill();
        }
    }
}
