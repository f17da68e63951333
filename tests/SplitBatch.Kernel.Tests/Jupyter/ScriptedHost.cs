using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// A host that runs a tiny language in place of C#, one step a line, so that the protocol is tested without a compiler:
/// <c>say</c>, <c>cry</c>, <c>value</c>, <c>json</c>, <c>show id</c>, <c>update id</c>, <c>clear</c>, <c>ask</c>, <c>fail</c>,
/// <c>wait</c>.
/// </summary>
public sealed class ScriptedHost : ICellHost
{
    private CancellationTokenSource _interrupt = new();

    public Task StartAsync(CancellationToken cancellation = default) => Task.CompletedTask;

    public async Task<CellResult> ExecuteAsync(string code, ICellSink sink, CancellationToken cancellation = default)
    {
        _interrupt = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        foreach (var line in code.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            var (verb, rest) = space < 0 ? (line, "") : (line[..space], line[(space + 1)..]);
            try
            {
                if (verb == "fail")
                {
                    return Failed("TestException", rest);
                }

                await StepAsync(verb, rest, sink);
            }
            catch (OperationCanceledException)
            {
                return Failed("Interrupted", "The cell was stopped.") with { Interrupted = true };
            }
            catch (InvalidOperationException e)
            {
                return Failed("InvalidOperationException", e.Message);
            }
        }

        return CellResult.Success;
    }

    public Task<Completions> CompleteAsync(string code, int cursor, CancellationToken cancellation = default)
    {
        var start = code.LastIndexOf(' ', Math.Max(cursor - 1, 0)) + 1;
        return Task.FromResult(new Completions(start, cursor, [new Completion(code[start..cursor] + "Open", "method")]));
    }

    public Task<MimeBundle?> InspectAsync(string code, int cursor, CancellationToken cancellation = default) =>
        Task.FromResult(code.Contains("Trial", StringComparison.Ordinal) ? MimeBundle.Plain($"at {cursor} of {code}") : null);

    public Completeness IsComplete(string code) =>
        code.EndsWith('{') ? Completeness.Incomplete : code.EndsWith('}') ? Completeness.Invalid : Completeness.Complete;

    public async Task<bool> InterruptAsync()
    {
        await _interrupt.CancelAsync();
        return true;
    }

    public ValueTask DisposeAsync()
    {
        _interrupt.Dispose();
        return ValueTask.CompletedTask;
    }

    private static CellResult Failed(string name, string message) => new(new CellError(name, message, [message, "at line 1"]));

    private async Task StepAsync(string verb, string rest, ICellSink sink)
    {
        var (id, text) = (rest.Split(' ')[0], rest[(rest.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        switch (verb)
        {
            case "say":
                sink.Publish(new TextOutput(rest + "\n"));
                break;
            case "cry":
                sink.Publish(new TextOutput(rest + "\n", IsError: true));
                break;
            case "value":
                sink.Publish(new ValueOutput(MimeBundle.Plain(rest)));
                break;
            case "json":
                sink.Publish(
                    new DisplayOutput(
                    new MimeBundle(new Dictionary<string, string> { ["application/json"] = rest, ["text/plain"] = rest })));
                break;
            case "show":
                sink.Publish(new DisplayOutput(MimeBundle.Plain(text), id));
                break;
            case "update":
                sink.Publish(new DisplayUpdate(MimeBundle.Plain(text), id));
                break;
            case "clear":
                sink.Publish(new ClearOutput(Wait: true));
                break;
            case "ask":
                sink.Publish(new TextOutput(await sink.ReadLineAsync(rest, password: false, _interrupt.Token)));
                break;
            case "wait":
                await Task.Delay(Timeout.Infinite, _interrupt.Token);
                break;
            default:
                throw new InvalidOperationException($"no such verb: {verb}");
        }
    }
}
