using System.Diagnostics;

namespace SplitBatch.Trials.Files;

/// <summary>
/// Waits for one's turn at a file. Programs, threads and accounts take turns by the system's lock on the file itself, so there is
/// nothing that a program killed in its turn could leave behind.
/// </summary>
internal static class Turn
{
    /// <summary>How long others are waited for.</summary>
    public static TimeSpan Patience { get; } = TimeSpan.FromSeconds(30);

    /// <summary>Opens a file as soon as nobody else keeps it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="open">Opens it, or fails while somebody else keeps it.</param>
    /// <exception cref="LogException">Somebody else kept it for longer than that.</exception>
    public static T Wait<T>(string path, TimeSpan patience, Func<T> open)
    {
        var clock = Stopwatch.StartNew();
        for (var pause = 1; ; pause = Math.Min(pause * 2, 16))
        {
            try
            {
                return open();
            }
            catch (IOException error) when (IsKept(error))
            {
                if (clock.Elapsed > patience)
                {
                    var waited = Printed.Fixed(patience.TotalSeconds, 0);
                    throw new LogException($"Another program has kept {Path.GetFileName(path)} for {waited} seconds. Close it, or "
                        + $"try again.", error);
                }

                Thread.Sleep(pause);
            }
        }
    }

    /// <summary>All that a file holds, once nobody is writing to it.</summary>
    /// <exception cref="LogException">Somebody wrote to it for too long.</exception>
    public static byte[] ReadBytes(string path, TimeSpan? patience = null) =>
        Wait(path, patience ?? Patience, () => File.ReadAllBytes(path));

    /// <summary>Whether a file could not be opened because somebody else keeps it; each system has its own number for that.</summary>
    private static bool IsKept(IOException error) => OperatingSystem.IsWindows()
        ? (error.HResult & 0xFFFF) is 32 or 33
        : error.HResult == (OperatingSystem.IsMacOS() ? 35 : 11);
}
