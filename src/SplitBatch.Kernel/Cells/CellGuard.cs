using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// What the compiled code of a cell calls at the start of every method and at the head of every loop: whether it is to stop, and whether
/// its stack is nearly full. The calls are woven in; no cell is written against them.
/// </summary>
/// <remarks>While no cell is being stopped, a look is one read of a static. Whose cell is meant is asked only then.</remarks>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class CellGuard
{
    /// <summary>The stack of a cell's thread, in bytes. Deep but finite recursion is common in numeric code.</summary>
    internal const int StackSize = 16 << 20;

    /// <summary>What is kept of it for <c>finally</c> blocks, which run on top of a full stack.</summary>
    private const int Reserve = 1 << 20;

    /// <summary>On a thread whose stack is of unknown size, so much is known to be left each time that the runtime was asked.</summary>
    private const int Stride = 48 << 10;

    /// <summary>So long a thread that was told once may tidy up: its finally blocks and Dispose methods look as well.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(250);

    private static volatile int stopping;
    [ThreadStatic] private static RunningCell? own;
    [ThreadStatic] private static RunningCell? told;
    [ThreadStatic] private static long toldAt;
    [ThreadStatic] private static nuint floor;
    [ThreadStatic] private static bool lowered;

    /// <summary>At the head of a loop.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Loop()
    {
        if (stopping != 0) Look();
    }

    /// <summary>At the start of a method that calls others.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static unsafe void Enter()
    {
        if (stopping != 0) Look();
        byte here;
        if ((nuint)(&here) - floor > StackSize) Deep((nuint)(&here));
    }

    /// <summary>
    /// At the start of each step of an async method: whether to leave it as it is, for ever. An exception would have to go through all
    /// that wait for it, one after another; what is left is simply never heard of again.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static unsafe bool Leave()
    {
        byte here;
        return (stopping != 0 && IsStopped()) || ((nuint)(&here) - floor > StackSize && HasNoRoom((nuint)(&here)));
    }

    /// <summary>The calling thread is a cell's own from now on.</summary>
    internal static unsafe void Begin(RunningCell cell)
    {
        byte here;
        floor = (nuint)(&here) - StackSize + Reserve;
        own = cell;
    }

    /// <summary>One cell more, or one less, is being stopped.</summary>
    internal static void CountStopped(int change) => Interlocked.Add(ref stopping, change);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool IsStopped() => (own ?? RunningCell.Current) is { IsStopped: true };

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Look()
    {
        if ((own ?? RunningCell.Current) is not { IsStopped: true } cell) return;
        if (told == cell && Stopwatch.GetElapsedTime(toldAt) < Grace) return;
        if (told != cell) (told, toldAt) = (cell, Stopwatch.GetTimestamp());
        throw new OperationCanceledException("The cell was interrupted.");
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Deep(nuint here)
    {
        if (HasRoom(here)) return;
        if (own is not null && !lowered) (floor, lowered) = (floor - (Reserve / 4 * 3), true);
        throw new InsufficientExecutionStackException("A function calls itself without end, or too deeply.");
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool HasNoRoom(nuint here)
    {
        if (HasRoom(here)) return false;
        if (RunningCell.Current is not { } cell) Deep(here);
        else cell.Overflow();
        return true;
    }

    private static bool HasRoom(nuint here)
    {
        if (own is not null || !RuntimeHelpers.TryEnsureSufficientExecutionStack()) return false;
        floor = here - Stride;
        return true;
    }
}
