using System.Text;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// One cell while it runs: where its outputs go, in order and one at a time, and whether it is to stop. Console writes that follow each
/// other closely are joined.
/// </summary>
internal sealed class RunningCell(ICellSink sink, CancellationToken cancellation) : IDisposable
{
    /// <summary>The most text that a cell may print, in characters.</summary>
    public const int MostText = 4_000_000;

    /// <summary>The most that a cell may show otherwise, in characters of all forms together.</summary>
    public const int MostShown = 64_000_000;

    private static readonly TimeSpan FlushAfter = TimeSpan.FromMilliseconds(40);
    private static readonly AsyncLocal<RunningCell?> Ambient = new();

    private readonly Lock gate = new();
    private readonly Lock keeping = new();
    private readonly StringBuilder text = new();
    private Timer? flushTimer;
    private bool isError;
    private long printed;
    private long shown;
    private volatile bool stopped;
    private int settled;

    /// <summary>The cell whose code is running here, followed through awaits, tasks and threads; null outside a cell.</summary>
    public static RunningCell? Current
    {
        get => Ambient.Value;
        set => Ambient.Value = value;
    }

    /// <summary>Told once, when the cell is to stop.</summary>
    public event Action? Stopping;

    /// <summary>Cancelled when the cell is to stop.</summary>
    public CancellationToken Cancellation { get; } = cancellation;

    /// <summary>Whether the cell is to stop. What it does from then on is not kept.</summary>
    public bool IsStopped => stopped;

    /// <summary>Variables that the cell wants to be disposed of at its end, in the order in which it makes them.</summary>
    public IReadOnlyList<string> Owned { get; init; } = [];

    /// <summary>What went wrong where no <c>catch</c> of the cell could see it: on a thread of its own, or for want of stack.</summary>
    public Exception? Stray { get; private set; }

    /// <summary>Keeps what the cell made, unless it was stopped before.</summary>
    /// <returns>Whether it was kept.</returns>
    public bool TryKeep(Action keep)
    {
        lock (keeping)
        {
            if (!stopped) keep();
            return !stopped;
        }
    }

    /// <summary>Makes the cell's code stop where it looks next.</summary>
    public void Stop()
    {
        lock (keeping)
        {
            if (stopped) return;
            stopped = true;
        }

        CellGuard.CountStopped(1);
        Stopping?.Invoke();
    }

    /// <summary>The cell's code has ended, as far as can be told; the looks of other cells need not ask for this one any more.</summary>
    public void Settle()
    {
        if (stopped && Interlocked.Exchange(ref settled, 1) == 0) CellGuard.CountStopped(-1);
    }

    /// <summary>An async method calls itself without end. The cell is stopped, and fails.</summary>
    public void Overflow()
    {
        Stray ??= new InsufficientExecutionStackException("An async function calls itself without end, or too deeply.");
        Stop();
    }

    /// <summary>Takes an exception that nobody caught.</summary>
    public void TakeStray(Exception error)
    {
        if (stopped && error is OperationCanceledException or ThreadInterruptedException) return;
        Stray ??= error;
        Write(true, $"Nobody caught this, on a thread that the cell started: {error.GetType().Name}: {error.Message}\n");
    }

    public void Write(bool toError, ReadOnlySpan<char> chars)
    {
        if (chars.IsEmpty) return;
        lock (gate)
        {
            if (printed > MostText) return;
            printed += chars.Length;
            if (toError != isError) FlushLocked();
            isError = toError;
            text.Append(chars);
            if (printed > MostText)
            {
                FlushLocked();
                sink.Publish(
                    new TextOutput($"\nThe cell has printed more than {Printed.Count(MostText)} characters; the rest is left out.\n",
                        IsError: true));
            }
            else if (text.Length > 16_384) FlushLocked();
            else flushTimer ??= new Timer(_ => Flush(), null, FlushAfter, Timeout.InfiniteTimeSpan);
        }
    }

    public void Publish(CellOutput output)
    {
        lock (gate)
        {
            if (shown > MostShown) return;
            shown += output is ShownOutput { Data.Forms: var forms } ? forms.Sum(f => (long)f.Value.Length) + 200 : 0;
            FlushLocked();
            if (shown <= MostShown) sink.Publish(output);
            else sink.Publish(
                new TextOutput($"\nThe cell has shown more than {Printed.Count(MostShown)} characters; the rest is left out.\n",
                    IsError: true));
        }
    }

    public Task<string> AskAsync(string prompt, bool password)
    {
        Flush();
        return sink.ReadLineAsync(prompt, password, Cancellation);
    }

    /// <summary>Delivers what is pending. What background tasks write later is still delivered.</summary>
    public void Dispose() => Flush();

    private void Flush()
    {
        lock (gate) FlushLocked();
    }

    private void FlushLocked()
    {
        flushTimer?.Dispose();
        flushTimer = null;
        if (text.Length == 0) return;
        var joined = text.ToString();
        text.Clear();
        sink.Publish(new TextOutput(joined, isError));
    }
}
