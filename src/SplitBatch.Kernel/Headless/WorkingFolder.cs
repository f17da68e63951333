namespace SplitBatch.Kernel.Headless;

/// <summary>
/// The process's current folder, lent to one run at a time. A cell expects <c>File.ReadAllText("x.csv")</c> to find the file beside its
/// notebook, and a process has only one current folder: a run that finds it lent waits until it is given back, as it was.
/// </summary>
internal sealed class WorkingFolder : IDisposable
{
    private static readonly SemaphoreSlim Turn = new(1, 1);
    private readonly string before = Directory.GetCurrentDirectory();

    private WorkingFolder()
    {
    }

    /// <summary>Waits for one's turn.</summary>
    public static async Task<WorkingFolder> BorrowAsync(CancellationToken cancellation = default)
    {
        await Turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return new WorkingFolder();
        }
        catch
        {
            Turn.Release();
            throw;
        }
    }

    /// <summary>Makes a folder the current one.</summary>
    public static void GoTo(string folder) => Directory.SetCurrentDirectory(folder);

    /// <summary>Makes the folder of before the current one again.</summary>
    public void GoBack() => Directory.SetCurrentDirectory(before);

    /// <summary>Gives it back.</summary>
    public void Dispose()
    {
        try
        {
            GoBack();
        }
        finally
        {
            Turn.Release();
        }
    }
}
