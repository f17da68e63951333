using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Questions that wait for an answer from the client that ran the cell. An answer nobody waits for is dropped.</summary>
public sealed class StdinQuestions
{
    private readonly Dictionary<string, TaskCompletionSource<string>> _waiting = [];
    private readonly Lock _lock = new();

    /// <summary>Asks, and waits for the answer.</summary>
    public async Task<string> AskAsync(Exchange exchange, string prompt, bool password, CancellationToken cancellation)
    {
        var asker = Key(exchange.Request);
        var answer = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_lock)
        {
            _waiting[asker] = answer;
        }

        exchange.Ask(new InputRequest(prompt, password));
        try
        {
            return await answer.Task.WaitAsync(cancellation).ConfigureAwait(false);
        }
        finally
        {
            lock (_lock)
            {
                if (_waiting.GetValueOrDefault(asker) == answer)
                {
                    _waiting.Remove(asker);
                }
            }
        }
    }

    /// <summary>Takes an answer. False when nobody waits for one from this client.</summary>
    public bool Answer(JupyterMessage reply, string value)
    {
        lock (_lock)
        {
            return _waiting.Remove(Key(reply), out var answer) && answer.TrySetResult(value);
        }
    }

    private static string Key(JupyterMessage message) => string.Join('/', message.Identities.Select(Convert.ToHexString));
}
