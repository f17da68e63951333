using System.Diagnostics;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.ExceptionServices;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// Exceptions that no code catches, on threads, timers and finalizers of cells. The runtime would end the process; here the cell is told,
/// and the thread alone ends.
/// </summary>
internal static class StrayErrors
{
    private static readonly ConditionalWeakTable<Assembly, WeakReference<RunningCell>> Cells = [];
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

    /// <summary>Tells what a cell was compiled to.</summary>
    public static void Own(Assembly code, RunningCell cell) => Cells.AddOrUpdate(code, new WeakReference<RunningCell>(cell));

    private static bool Take(Exception error)
    {
        if ((RunningCell.Current ?? CellOf(error) ?? latest) is not { } cell) return false;
        cell.TakeStray(error);
        return true;
    }

    /// <summary>The cell whose code threw it, where the thread itself does not know its cell.</summary>
    private static RunningCell? CellOf(Exception error) => new StackTrace(error, fNeedFileInfo: false).GetFrames()
        .Select(frame => frame.GetMethod()?.Module.Assembly).OfType<Assembly>()
        .Select(code => Cells.TryGetValue(code, out var weak) && weak.TryGetTarget(out var cell) ? cell : null)
        .FirstOrDefault(cell => cell is not null);
}
