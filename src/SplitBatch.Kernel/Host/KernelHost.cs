using System.Diagnostics;
using System.Globalization;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Engine;
using SplitBatch.Kernel.Packages;

namespace SplitBatch.Kernel.Host;

/// <summary>
/// The C# kernel with the SplitBatch library, its displays and the usual namespaces loaded. Whoever wants a cell run,
/// the headless runner or a notebook's front end, asks <see cref="ExecuteAsync"/>: there is no other way.
/// </summary>
/// <remarks>
/// Any member may be called from any thread. Kernels in one process share the console, the current folder, formatters
/// and statics; variables and types of cells are their own.
/// </remarks>
/// <param name="options">How the kernel is set up; as usual when null.</param>
public sealed partial class KernelHost(KernelHostOptions? options = null) : ICellHost
{
    private const int SpareThreads = 16;

    private readonly KernelHostOptions options = options ?? new KernelHostOptions();
    private readonly Lock gate = new();
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly List<CellThread> threads = [];
    private readonly List<CancellationTokenSource> asked = [];
    private readonly MissingData missing = new();
    private ICellEngine? engine;
    private LoadedPackages? packages;
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private Task? start;
    private Run? current;
    private bool leftBehind;
    private bool disposed;

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">The start code does not compile or fails.</exception>
    public Task StartAsync(CancellationToken cancellation = default)
    {
        ObjectDisposedException.ThrowIf(disposed, this);
        lock (gate) start ??= Task.Run(SetUpAsync, CancellationToken.None);
        return start.WaitAsync(cancellation);
    }

    /// <inheritdoc/>
    public async Task<CellResult> ExecuteAsync(string code, ICellSink sink, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(sink);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        lock (gate) asked.Add(stop);
        try
        {
            await StartAsync(stop.Token).ConfigureAwait(false);
            await turn.WaitAsync(stop.Token).ConfigureAwait(false);
            try
            {
                return await RunAsync(code, sink, stop.Token).ConfigureAwait(false);
            }
            finally
            {
                turn.Release();
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return CellErrors.Interrupted(leftBehind: false);
        }
        finally
        {
            lock (gate) asked.Remove(stop);
        }
    }

    /// <inheritdoc/>
    public async Task<bool> InterruptAsync()
    {
        // A cell that waits for the kernel to start is stopped as well; the start itself goes on, or no cell could ever run.
        CancellationTokenSource[] stopped;
        lock (gate) stopped = [.. asked];
        foreach (var stop in stopped) Cancel(stop);
        if (current is { IsStart: false } run)
        {
            Cancel(run.Stop);
            await run.Ended.Task.ConfigureAwait(false);
        }

        return !leftBehind;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (disposed) return;
        disposed = true;
        if (start is null) return;
        await InterruptAsync().ConfigureAwait(false);
        engine?.Dispose();
        packages?.Dispose();
    }

    private static void Cancel(CancellationTokenSource stop)
    {
        try
        {
            stop.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // The cell ended at this moment.
        }
    }

    private async Task SetUpAsync()
    {
        LongCall.StopBy(CellGuard.Loop);
        LeaveThreads();
        ValueFormat.Register(options.FreshDisplays);
        if (options.NuGet) packages = new LoadedPackages(StartSetting.References);
        engine = options.Engine(OnOwnThreadAsync, name => packages?.Find(name));
        var result = await RunAsync(StartSetting.Usings + options.StartCode, new NoSink(), CancellationToken.None, isStart: true)
            .ConfigureAwait(false);
        if (result.Error is { } error)
            throw new InvalidOperationException($"The kernel's start code failed: {string.Join('\n', error.Traceback)}");
    }

    /// <summary>
    /// Cells share the pool of threads with the kernel: even if one takes all of its first threads, an interrupt finds one.
    /// </summary>
    private static void LeaveThreads()
    {
        ThreadPool.GetMinThreads(out var workers, out var ports);
        ThreadPool.SetMinThreads(Math.Max(workers, Environment.ProcessorCount + SpareThreads), ports);
    }

    private async Task<CellResult> RunAsync(string code, ICellSink sink, CancellationToken cancellation, bool isStart = false)
    {
        leftBehind = false;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var text = CellText.Of(code);
        using var cell = new RunningCell(sink, stop.Token) { Owned = text.Owned };
        using var stopping = stop.Token.Register(cell.Stop);
        var run = new Run(cell, stop, isStart);
        RunningCell.Current = cell;
        StrayErrors.Follow(cell);
        var names = CellNames.Of(text.Code);
        if (missing.WaitedFor(names) is { } awaited) return NotYet(cell, names, awaited, waits: true);
        lock (threads) threads.Clear();
        current = run;
        try
        {
            var (rest, refused) = await FetchPackagesAsync(text.Code, cell).ConfigureAwait(false);
            if (refused is not null) return refused;
            var clock = Stopwatch.StartNew();
            var outcome = await engine!.RunAsync(rest, cell).ConfigureAwait(false);
            if (text.IsTimed)
                cell.Write(false,
                    string.Create(CultureInfo.InvariantCulture,
                        $"The cell took {Printed.Fixed(clock.Elapsed.TotalMilliseconds, 1)} ms.\n"));
            if (outcome is { Finished: true, Failed: false })
            {
                missing.Ran(names);
                known.UnionWith(names.Made);
                return cell.Stray is { } stray ? new CellResult(CellErrors.From(stray)) : CellResult.Success;
            }

            if (!stop.IsCancellationRequested && MissingData.Of(outcome.Exception) is { } reason)
                return NotYet(cell, names, reason, waits: false);
            if (!stop.IsCancellationRequested) return new CellResult(CellErrors.From(outcome, code, known));
            leftBehind = !await StopThreadsAsync().ConfigureAwait(false);
            return CellErrors.Interrupted(leftBehind);
        }
        finally
        {
            current = null;
            run.Ended.SetResult();
        }
    }

    /// <summary>Fetches the packages that the cell asks for; the rest of it is left to run.</summary>
    private async Task<(string Left, CellResult? Refused)> FetchPackagesAsync(string code, RunningCell cell)
    {
        try
        {
            var request = PackageRequest.Read(code);
            if (packages is null || request.IsEmpty) return (code, null);
            var (said, files) = await packages.AddAsync(request, cell.Cancellation).ConfigureAwait(false);
            engine!.AddReferences(files);
            if (said.Count > 0) cell.Publish(new DisplayOutput(MimeBundle.Plain(string.Join('\n', said))));
            return (request.Rest, null);
        }
        catch (Exception error) when (error is PackageException or FormatException)
        {
            return ("", CellErrors.NoPackage(error.Message));
        }
        catch (OperationCanceledException)
        {
            return ("", CellErrors.Interrupted(leftBehind: false));
        }
    }

    private CellResult NotYet(RunningCell cell, CellNames names, string reason, bool waits)
    {
        missing.Wait(names, reason);
        cell.Publish(MissingData.Note(reason, waits));
        return new CellResult { NotYet = reason };
    }

    private async Task<bool> StopThreadsAsync()
    {
        CellThread[] started;
        lock (threads) started = [.. threads];
        var stopped = await Task.WhenAll(started.Select(t => t.StopAsync())).ConfigureAwait(false);
        return stopped.All(s => s);
    }

    private Task OnOwnThreadAsync(Func<Task> body)
    {
        lock (threads)
        {
            // A cell that was stopped before it began must not begin.
            if (current is not { Stop.IsCancellationRequested: false } run) throw new OperationCanceledException();
            var thread = CellThread.Start(run.Cell, body);
            threads.Add(thread);
            return thread.Completed;
        }
    }

    private sealed record Run(RunningCell Cell, CancellationTokenSource Stop, bool IsStart)
    {
        public TaskCompletionSource Ended { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }

    private sealed class NoSink : ICellSink
    {
        public void Publish(CellOutput output)
        {
        }

        public Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation) =>
            throw new InvalidOperationException("The start code may not ask for input.");
    }
}
