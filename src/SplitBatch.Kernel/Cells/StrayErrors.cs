using System.Runtime.ExceptionServices;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// Exceptions that no code catches, on threads, timers and finalizers of cells. The runtime would end the process; here the cell is told,
/// and the thread alone ends.
/// </summary>
internal static class StrayErrors
{
    private static int installed;
    private static volatile RunningCell? latest;

    /// <summary>Takes stray exceptions from now on. Process-wide; works once.</summary>
    /// <param name="cell">The cell that begins: it is told where nobody else can be.</param>
    public static void Follow(RunningCell cell)
    {
        latest = cell;
        if (Interlocked.Exchange(ref installed, 1) != 0) return;
        try
        {
            ExceptionHandling.SetUnhandledExceptionHandler(Take);
        }
        catch (InvalidOperationException)
        {
            // Whoever hosts this process has a handler of its own.
        }
    }

    private static bool Take(Exception error)
    {
        if ((RunningCell.Current ?? latest) is not { } cell) return false;
        cell.TakeStray(error);
        return true;
    }
}
