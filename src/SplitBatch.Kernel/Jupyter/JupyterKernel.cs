using System.Text.Json;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Requests;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// A kernel that speaks the Jupyter messaging protocol for a cell host. It answers as soon as its sockets stand; the host warms up behind.
/// Requests on shell are served one after another; questions for help and requests on control beside them.
/// </summary>
public sealed class JupyterKernel : IDisposable
{
    private readonly ICellHost _host;
    private readonly KernelLog _log;
    private readonly Backlog _shell = new();
    private readonly Backlog _help = new();
    private readonly Backlog _control = new();
    private readonly StdinQuestions _questions = new();
    private readonly IdleMemory _memory = new();
    private readonly CancellationTokenSource _stop = new();
    private readonly JupyterSession _session;
    private readonly RequestRouter _shellRouter;
    private readonly ThreadStart _interrupt;
    private readonly RequestRouter _controlRouter;

    /// <summary>Makes a kernel whose messages leave by <paramref name="outbox"/>.</summary>
    public JupyterKernel(ICellHost host, IOutbox outbox, KernelLog log)
    {
        _host = host;
        _log = log;
        _session = new JupyterSession(outbox);
        var info = new KernelInfoHandler();
        var history = new History();
        var execute = new ExecuteHandler(host, history, _questions, _shell.DropWaitingCells);
        _interrupt = execute.Interrupt; // At once: the cell may have taken every thread on which requests are served.
        IRequestHandler[] shell =
        [
            info,
            execute,
            new CompleteHandler(host),
            new InspectHandler(host),
            new IsCompleteHandler(host),
            new HistoryHandler(history),
            new CommInfoHandler(),
            new CommOpenHandler(),
            new CommIgnoredHandler("comm_msg"),
            new CommIgnoredHandler("comm_close"),
        ];
        IRequestHandler[] control = [new InterruptHandler(), new ShutdownHandler(Stop), new DebugHandler()];
        _shellRouter = new RequestRouter(_session, [.. shell, .. control], log);
        _controlRouter = new RequestRouter(_session, [info, .. control], log);
    }

    /// <summary>
    /// Runs a kernel on the sockets of a connection file until a client shuts it down or <paramref name="cancellation"/> ends it.
    /// </summary>
    public static async Task ServeAsync(ConnectionFile connection, ICellHost host, KernelLog log, CancellationToken cancellation)
    {
        var outbox = new LateOutbox();
        using var kernel = new JupyterKernel(host, outbox, log);
        using var sockets = new KernelSockets(connection, log, kernel.Receive);
        outbox.Open(sockets);
        sockets.Start();
        await kernel.RunAsync(cancellation).ConfigureAwait(false);
    }

    /// <summary>Takes a request from a channel. Returns at once.</summary>
    public void Receive(JupyterChannel channel, JupyterMessage message)
    {
        switch (channel)
        {
            case JupyterChannel.Shell when message.Header.MsgType is "complete_request" or "inspect_request" or "is_complete_request":
                _help.Add(message); // A running cell does not hold up help.
                break;
            case JupyterChannel.Shell:
                _shell.Add(message);
                break;
            case JupyterChannel.Control:
                if (message.Header.MsgType == "interrupt_request")
                    new Thread(_interrupt) { IsBackground = true, Name = "interrupt" }.Start();
                _control.Add(message);
                break;
            case JupyterChannel.Stdin:
                TakeAnswer(message);
                break;
        }
    }

    /// <summary>Serves requests until the kernel is shut down.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        using var registration = cancellation.Register(Stop);
        _session.Publish(null, "status", new StatusContent("starting"), WireJson.Plain.StatusContent);
        await Task.WhenAll(
            WarmUpAsync(),
            ServeAsync(_shell, JupyterChannel.Shell, _shellRouter),
            ServeAsync(_help, JupyterChannel.Shell, _shellRouter),
            ServeAsync(_control, JupyterChannel.Control, _controlRouter)).ConfigureAwait(false);
    }

    /// <summary>Ends <see cref="RunAsync"/>, whatever runs.</summary>
    public void Stop() => _stop.Cancel();

    /// <inheritdoc/>
    public void Dispose()
    {
        _memory.Dispose();
        _stop.Dispose();
    }

    private async Task WarmUpAsync()
    {
        try
        {
            await Task.Run(() => _host.StartAsync(_stop.Token), _stop.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
        }
        catch (Exception e)
        {
            _log.Write($"the host did not start: {e}");
        }
    }

    private Task ServeAsync(Backlog backlog, JupyterChannel channel, RequestRouter router) => Task.Run(async () =>
    {
        try
        {
            await foreach (var (message, dropped) in backlog.ReadAsync(_stop.Token).ConfigureAwait(false))
            {
                _memory.Busy();
                var served = Task.CompletedTask;
                if (dropped) ExecuteHandler.Abort(new Exchange(_session, channel, message));
                else served = router.HandleAsync(channel, message, _stop.Token);

                // A cell is not waited for at the end; a shutdown is answered before it.
                await (channel == JupyterChannel.Control ? served : served.WaitAsync(_stop.Token)).ConfigureAwait(false);
                _memory.Idle();
            }
        }
        catch (OperationCanceledException)
        {
        }
    });

    private void TakeAnswer(JupyterMessage message)
    {
        if (message.Header.MsgType != "input_reply")
        {
            _log.Write($"a message of unknown type '{message.Header.MsgType}' on stdin was dropped");
            return;
        }

        try
        {
            var reply = JsonSerializer.Deserialize(message.Content, WireJson.Plain.InputReply);
            if (!_questions.Answer(message, reply?.Value ?? ""))
            {
                _log.Write("an answer nobody waits for was dropped");
            }
        }
        catch (JsonException e)
        {
            _log.Write($"an answer could not be read: {e.Message}");
        }
    }

    /// <summary>Holds the place of the sockets until they stand; the kernel sends nothing before.</summary>
    private sealed class LateOutbox : IOutbox
    {
        private IOutbox? _outbox;

        public void Open(IOutbox outbox) => _outbox = outbox;

        public void Send(OutgoingMessage message) => _outbox?.Send(message);
    }

    /// <summary>
    /// Hands memory back when nothing has been asked of the kernel for a while. A class has thirty kernels on one machine, most of them
    /// waiting; the runtime by itself collects only when more is asked for.
    /// </summary>
    private sealed class IdleMemory : IDisposable
    {
        private static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

        private readonly Timer _timer;
        private int _served;

        public IdleMemory() => _timer = new Timer(_ => GC.Collect(2, GCCollectionMode.Aggressive, blocking: true, compacting: true));

        /// <summary>A request is being served.</summary>
        public void Busy()
        {
            if (Interlocked.Increment(ref _served) == 1) _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        }

        /// <summary>It has been. Once none is, memory is handed back, unless another comes before.</summary>
        public void Idle()
        {
            if (Interlocked.Decrement(ref _served) == 0) _timer.Change(Rest, Timeout.InfiniteTimeSpan);
        }

        /// <inheritdoc/>
        public void Dispose() => _timer.Dispose();
    }
}
