using System.Collections.Concurrent;
using System.Runtime;

namespace SplitBatch.Kernel.Host;

/// <summary>
/// The thread of one running cell. Everything after an <c>await</c> in the cell comes back to it, so that a cancel can
/// end a busy loop wherever it stands: an await is abandoned, a blocking call is interrupted, a loop is aborted.
/// </summary>
/// <remarks>
/// An abort may fall into the middle of the runtime's own work and leave it broken (seen: a timer list, and with it the process). So it
/// comes last, and only to a thread that has been busy for a while: a cell that still compiles gets to its end, and one that waits is
/// interrupted, which is harmless.
/// What cannot be ended: work on threads the cell started itself, and a native call that never returns. <see cref="StopAsync"/>
/// then answers false, and the kernel needs a restart.
/// </remarks>
internal sealed class CellThread : SynchronizationContext
{
    /// <summary>Deep but finite recursion is common in numeric code; the default stack is 1.5 to 8 MB by platform.</summary>
    private const int StackSize = 16 * 1024 * 1024;

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(50);

    /// <summary>So many looks in a row must find the thread waiting before it is interrupted.</summary>
    private const int WaitsBeforeInterrupt = 4;

    /// <summary>So many looks in a row must find the thread busy before it is aborted.</summary>
    private const int BusyBeforeAbort = 10;

    /// <summary>A cell that swallows so many interrupts is aborted as well.</summary>
    private const int InterruptsBeforeAbort = 3;

    private readonly BlockingCollection<(SendOrPostCallback Callback, object? State)> posts = [];
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource abort;
    private readonly CancellationTokenSource abandon;
    private readonly Lock letGoGate = new();
    private readonly TaskCompletionSource completed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Thread thread;
    private volatile bool closed;
    private bool letGo;

    private CellThread(Func<Task> body, CancellationTokenSource abort, CancellationTokenSource abandon)
    {
        this.abort = abort;
        this.abandon = abandon;
        thread = new Thread(() => Run(body), StackSize) { IsBackground = true, Name = "cell" };
    }

    /// <summary>Completes as the cell does, once the thread has ended; cancelled when the cell was stopped first.</summary>
    public Task Completed => completed.Task;

    /// <summary>Starts <paramref name="body"/> on a new thread, with the caller's ambient state.</summary>
    public static CellThread Start(Func<Task> body)
    {
        var cell = new CellThread(body, new CancellationTokenSource(), new CancellationTokenSource());
        cell.thread.Start();
        return cell;
    }

    /// <summary>Ends the cell. Answers false if it still runs after <paramref name="limit"/>.</summary>
    public async Task<bool> StopAsync(TimeSpan limit)
    {
        closed = true;
        await abandon.CancelAsync().ConfigureAwait(false);
        var deadline = DateTime.UtcNow + limit;
        var (waiting, busy, interrupts) = (0, 0, 0);
        while (!ended.Task.IsCompleted && DateTime.UtcNow < deadline)
        {
            await Task.WhenAny(ended.Task, Task.Delay(Look)).ConfigureAwait(false);
            (waiting, busy) = (thread.ThreadState & ThreadState.WaitSleepJoin) != 0 ? (waiting + 1, 0) : (0, busy + 1);
            if (waiting == WaitsBeforeInterrupt)
            {
                waiting = 0;
                interrupts++;
                Interrupt();
            }

            // Not awaited: aborting a thread that blocks returns only when it no longer does.
            if (busy >= BusyBeforeAbort || interrupts >= InterruptsBeforeAbort) _ = abort.CancelAsync();
        }

        return ended.Task.IsCompleted;
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
        try
        {
#pragma warning disable SYSLIB0046 // The documented way to end a loop in code submitted by a person at a notebook.
            ControlledExecution.Run(() => Pump(body), abort.Token);
#pragma warning restore SYSLIB0046
        }
        catch (Exception error)
        {
            if (error is OperationCanceledException) completed.TrySetCanceled(CancellationToken.None);
            else completed.TrySetException(error);
        }

        if (closed) TakeLastInterrupt();
        completed.TrySetCanceled(CancellationToken.None); // No more than a guard: set above or in the pump.
        ended.TrySetResult();
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
}
