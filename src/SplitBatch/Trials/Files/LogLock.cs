using System.Diagnostics;

namespace SplitBatch.Trials.Files;

/// <summary>
/// Lets one writer at a time into a trial folder, across threads and programs. The lock is held on a small hidden file of the
/// folder that stays there; the operating system frees it when its holder ends, however it ends.
/// </summary>
internal sealed class LogLock : IDisposable
{
    /// <summary>The hidden file.</summary>
    public const string FileName = ".splitbatch-lock";

    private readonly FileStream stream;

    private LogLock(FileStream stream) => this.stream = stream;

    /// <summary>Waits until no one else writes.</summary>
    /// <param name="folder">The trial folder.</param>
    /// <param name="patience">How long to wait.</param>
    /// <exception cref="LogException">Someone else kept the lock for longer than that, or the folder may not be written to.</exception>
    public static LogLock Take(string folder, TimeSpan patience)
    {
        var path = Path.Combine(folder, FileName);
        var clock = Stopwatch.StartNew();
        for (var pause = 1; ; pause = Math.Min(pause * 2, 16))
        {
            try
            {
                return new LogLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1));
            }
            catch (UnauthorizedAccessException error)
            {
                throw new LogException($"This account may not write to {folder}.", error);
            }
            catch (IOException error) when (error is not (DirectoryNotFoundException or FileNotFoundException or PathTooLongException))
            {
                if (clock.Elapsed > patience)
                {
                    throw new LogException($"Another program has been writing to {folder} for {patience.TotalSeconds:0} seconds. Close it, or try again.", error);
                }

                Thread.Sleep(pause);
            }
        }
    }

    /// <summary>As <see cref="Take"/>, but null in a folder that may only be read, where no one else writes either.</summary>
    /// <exception cref="LogException">Someone else kept the lock for longer than that.</exception>
    public static LogLock? TakeIfAllowed(string folder, TimeSpan patience)
    {
        try
        {
            return Take(folder, patience);
        }
        catch (LogException error) when (error.InnerException is UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();
}
