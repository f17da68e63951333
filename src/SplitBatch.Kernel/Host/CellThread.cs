using System.Collections.Concurrent;
using System.Diagnostics;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

/// <summary>
/// The thread of one running cell. Everything after an <c>await</c> in the cell comes back to it. To stop the cell, its code is asked
/// (<see cref="CellGuard"/>), an await is abandoned and a wait is interrupted; nothing is aborted, since an abort may fall into the middle
/// of the runtime's own work and leave it broken.
/// </summary>
/// <remarks>
/// A call into a library does not look. A cell that still sits in one after a while is left behind: the kernel goes on without it, and it
/// ends where its own code looks next.
/// </remarks>
internal sealed class CellThread : SynchronizationContext
{
    /// <summary>A cell that has not stopped by then is left behind.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(600);

    /// <summary>What a stopped cell has started may take so long to look.</summary>
    private static readonly TimeSpan Aftermath = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(25);

    /// <summary>So many looks in a row must find the thread waiting before it is interrupted.</summary>
    private const int WaitsBeforeInterrupt = 6;

    private readonly BlockingCollection<(SendOrPostCallback Callback, object? State)> posts = [];
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource completed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource abandon;
    private readonly Lock letGoGate = new();
    private readonly Lazy<Task<bool>> ending;
    private readonly RunningCell cell;
    private readonly Thread thread;
    private volatile bool closed;
    private bool letGo;

    private CellThread(RunningCell cell, Func<Task> body, CancellationTokenSource abandon)
    {
        this.cell = cell;
        this.abandon = abandon;
        ending = new Lazy<Task<bool>>(End);
        cell.Stopping += OnStopping;
        thread = new Thread(() => Run(body), CellGuard.StackSize) { IsBackground = true, Name = "cell" };
    }

    /// <summary>Completes as the cell does, once the thread has ended; cancelled when the cell was stopped, or left behind.</summary>
    public Task Completed => completed.Task;

    /// <summary>Starts <paramref name="body"/> on a new thread, with the caller's ambient state.</summary>
    public static CellThread Start(RunningCell cell, Func<Task> body)
    {
        var started = new CellThread(cell, body, new CancellationTokenSource());
        started.thread.Start();
        return started;
    }

    /// <summary>Stops the cell. Answers false where it had to be left behind.</summary>
    public Task<bool> StopAsync()
    {
        cell.Stop();
        return ending.Value;
    }

    /// <inheritdoc/>
    public override void Post(SendOrPostCallback d, object? state)
    {
        if (closed) return; // The rest of an abandoned cell must not run.
        try
        {
            posts.Add((d, state));
        }
        catch (InvalidOperationException)
        {
            // The cell ended while a task of its own still ran: let that task go on elsewhere.
            ThreadPool.QueueUserWorkItem(_ => RunLate(d, state));
        }
    }

    /// <inheritdoc/>
    public override void Send(SendOrPostCallback d, object? state) => throw new NotSupportedException("A cell's thread takes posts only.");

    /// <inheritdoc/>
    public override SynchronizationContext CreateCopy() => this;

    private void Run(Func<Task> body)
    {
        CellGuard.Begin(cell);
        try
        {
            Pump(body);
        }
        catch (Exception error)
        {
            if (cell.IsStopped) Abandon();
            else completed.TrySetException(error);
        }

        if (closed) TakeLastInterrupt();
        ended.TrySetResult();
        if (cell.IsStopped) _ = Task.Delay(Aftermath).ContinueWith(_ => cell.Settle(), TaskScheduler.Default);
    }

    private void Pump(Func<Task> body)
    {
        SetSynchronizationContext(this);
        var task = body();
        task.ContinueWith(
            _ => posts.CompleteAdding(), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        foreach (var (callback, state) in posts.GetConsumingEnumerable(abandon.Token)) callback(state);
        if (task.IsFaulted) completed.TrySetException(task.Exception.InnerExceptions);
        else completed.TrySetResult();
    }

    private void OnStopping()
    {
        closed = true;
        abandon.Cancel();
        _ = ending.Value;
    }

    /// <summary>Sees the cell to its end, on a thread of its own: the cell may have taken all that the pool has.</summary>
    private Task<bool> End()
    {
        var stopped = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        new Thread(() => stopped.SetResult(WaitForEnd())) { IsBackground = true, Name = "stopping" }.Start();
        return stopped.Task;
    }

    private bool WaitForEnd()
    {
        var waiting = 0;
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < Patience && !ended.Task.Wait(Look);)
        {
            waiting = (thread.ThreadState & System.Threading.ThreadState.WaitSleepJoin) != 0 ? waiting + 1 : 0;
            if (waiting == WaitsBeforeInterrupt) Interrupt();
            waiting %= WaitsBeforeInterrupt;
        }

        Abandon();
        return ended.Task.IsCompleted;
    }

    private void Abandon()
    {
        if (cell.Stray is { } stray) completed.TrySetException(stray);
        else completed.TrySetCanceled(CancellationToken.None);
    }

    private void Interrupt()
    {
        lock (letGoGate)
        {
            if (!letGo) thread.Interrupt();
        }
    }

    /// <summary>An interrupt that came as the cell ended would otherwise strike the thread outside of it.</summary>
    private void TakeLastInterrupt()
    {
        for (var turn = 0; turn < 2; turn++)
        {
            try
            {
                lock (letGoGate) letGo = true;
                Thread.Sleep(1);
            }
            catch (ThreadInterruptedException)
            {
            }
        }
    }

    private static void RunLate(SendOrPostCallback callback, object? state)
    {
        try
        {
            callback(state);
        }
        catch (Exception error)
        {
            Console.Error.WriteLine($"A task that outlived its cell failed: {error.GetType().Name}: {error.Message}");
        }
    }
}
