using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Runs a cell, and afterwards the expressions the client asks for beside it.</summary>
public sealed class ExecuteHandler(ICellHost host, History history, StdinQuestions questions, Action dropWaitingCells) : IRequestHandler
{
    private static readonly MimeBundle NoValue = new(new Dictionary<string, string>());

    private readonly Lock _gate = new();
    private CancellationTokenSource? _stop;
    private int _count;

    /// <inheritdoc/>
    public string MessageType => "execute_request";

    /// <inheritdoc/>
    public async Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var request = exchange.Content(WireJson.Plain.ExecuteRequest);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        lock (_gate) _stop = stop;
        try
        {
            await HandleAsync(exchange, request, stop.Token).ConfigureAwait(false);
        }
        finally
        {
            lock (_gate) _stop = null;
        }
    }

    /// <summary>Stops the cell being served, from the moment that clients were told of it, whether or not it runs already.</summary>
    public void Interrupt()
    {
        lock (_gate) _stop?.Cancel();
    }

    private async Task HandleAsync(Exchange exchange, ExecuteRequest request, CancellationToken cancellation)
    {
        var store = !request.Silent && request.StoreHistory != false;
        var count = request.Silent ? _count : _count + 1;
        if (store)
        {
            _count = count;
        }

        if (!request.Silent)
        {
            exchange.Publish("execute_input", new ExecuteInputContent(request.Code, count), WireJson.Plain.ExecuteInputContent);
        }

        var sink = new JupyterCellSink(exchange, questions, count, request.Silent, request.AllowStdin);
        var result = await RunAsync(request.Code, sink, cancellation).ConfigureAwait(false);
        sink.Flush();
        if (store)
        {
            history.Add(new HistoryEntry(count, request.Code, sink.PlainValue));
        }

        if (result.Error is { } error)
        {
            Fail(exchange, request, count, error);
            return;
        }

        var expressions = await EvaluateAsync(request.UserExpressions, cancellation).ConfigureAwait(false);
        exchange.Reply(new ExecuteReply(count, sink.Pages, expressions), WireJson.Plain.ExecuteReply);
    }

    /// <summary>Answers a cell that is not run because one before it failed.</summary>
    public static void Abort(Exchange exchange)
    {
        exchange.Status("busy");
        exchange.Reply(new ExecuteAbortedReply(), WireJson.Plain.ExecuteAbortedReply);
        exchange.Status("idle");
    }

    private async Task<CellResult> RunAsync(string code, JupyterCellSink sink, CancellationToken cancellation)
    {
        if (HelpQuestion.TryRead(code, out var subject))
        {
            sink.Publish(await HelpQuestion.AnswerAsync(host, subject, cancellation).ConfigureAwait(false));
            return CellResult.Success;
        }

        return await host.ExecuteAsync(code, sink, cancellation).ConfigureAwait(false);
    }

    private void Fail(Exchange exchange, ExecuteRequest request, int count, CellError error)
    {
        if (!request.Silent)
        {
            exchange.Publish("error", new ErrorContent(error.Name, error.Message, error.Traceback), WireJson.Plain.ErrorContent);
        }

        if (request.StopOnError)
        {
            dropWaitingCells();
        }

        exchange.Reply(new ExecuteErrorReply(count, error.Name, error.Message, error.Traceback), WireJson.Plain.ExecuteErrorReply);
    }

    private async Task<Dictionary<string, ExpressionOutcome>> EvaluateAsync(
        Dictionary<string, string>? expressions, CancellationToken cancellation)
    {
        var outcomes = new Dictionary<string, ExpressionOutcome>();
        foreach (var (name, code) in expressions ?? [])
        {
            var sink = new ValueSink();
            var result = await host.ExecuteAsync(code, sink, cancellation).ConfigureAwait(false);
            outcomes[name] = result.Error is { } e
                ? new ExpressionOutcome("error", Ename: e.Name, Evalue: e.Message, Traceback: e.Traceback)
                : new ExpressionOutcome("ok", sink.Value ?? NoValue, new EmptyContent());
        }

        return outcomes;
    }

    /// <summary>Keeps the value alone; what an expression prints is nobody's.</summary>
    private sealed class ValueSink : ICellSink
    {
        public MimeBundle? Value { get; private set; }

        public void Publish(CellOutput output) => Value = (output as ValueOutput)?.Data ?? Value;

        public Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation) =>
            throw new InvalidOperationException("An expression beside a cell cannot ask for input.");
    }
}
