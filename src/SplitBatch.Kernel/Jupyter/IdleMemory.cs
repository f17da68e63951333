namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// Hands memory back when nothing has been asked of the kernel for a while. A class has thirty kernels on one machine, most of them
/// waiting; the runtime by itself collects only when more is asked for.
/// </summary>
internal sealed class IdleMemory : IDisposable
{
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

    private readonly Timer _timer;

    public IdleMemory() => _timer = new Timer(_ => GC.Collect(2, GCCollectionMode.Aggressive, blocking: true, compacting: true));

    /// <summary>A request is being served.</summary>
    public void Busy() => _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);

    /// <summary>It has been; memory is handed back once, unless another comes before.</summary>
    public void Idle() => _timer.Change(Rest, Timeout.InfiniteTimeSpan);

    /// <inheritdoc/>
    public void Dispose() => _timer.Dispose();
}
