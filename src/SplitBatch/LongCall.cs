using System.ComponentModel;

namespace SplitBatch;

/// <summary>
/// Lets whoever hosts the library stop its long calls. Draws, simulated panels, deals by chance and write-ups look here from one piece of
/// their work to the next; nothing is stopped in the middle of a file.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class LongCall
{
    private static Action look = static () => { };

    /// <summary>Sets what a long call asks between two pieces of its work. Process-wide.</summary>
    /// <param name="ask">Returns at once, or throws <see cref="OperationCanceledException"/> where the calling code is to stop.</param>
    public static void StopBy(Action ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        look = ask;
    }

    /// <summary>Asks whether the calling code is to stop.</summary>
    /// <exception cref="OperationCanceledException">It is.</exception>
    public static void Look() => look();
}
