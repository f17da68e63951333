using System.Text;

namespace SplitBatch.Kernel.Cells;

/// <summary>Where the outputs of one cell go, in order and one at a time; joins console writes that follow each other closely.</summary>
internal sealed class RunningCell(ICellSink sink, CancellationToken cancellation) : IDisposable
{
    private static readonly TimeSpan FlushAfter = TimeSpan.FromMilliseconds(40);
    private static readonly AsyncLocal<RunningCell?> Ambient = new();

    private readonly Lock gate = new();
    private readonly StringBuilder text = new();
    private Timer? flushTimer;
    private bool isError;

    /// <summary>The cell whose code is running here, followed through awaits and tasks; null outside a cell.</summary>
    public static RunningCell? Current
    {
        get => Ambient.Value;
        set => Ambient.Value = value;
    }

    /// <summary>Cancelled when the cell is to stop.</summary>
    public CancellationToken Cancellation { get; } = cancellation;

    public void Write(bool toError, ReadOnlySpan<char> chars)
    {
        if (chars.IsEmpty) return;
        lock (gate)
        {
            if (toError != isError) FlushLocked();
            isError = toError;
            text.Append(chars);
            if (text.Length > 16_384) FlushLocked();
            else flushTimer ??= new Timer(_ => Flush(), null, FlushAfter, Timeout.InfiniteTimeSpan);
        }
    }

    public void Publish(CellOutput output)
    {
        lock (gate)
        {
            FlushLocked();
            sink.Publish(output);
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
