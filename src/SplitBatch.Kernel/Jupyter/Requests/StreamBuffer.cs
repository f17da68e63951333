using System.Text;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>
/// Gathers what a cell prints into few <c>stream</c> messages: a write is held for a moment in case more follows. Anything else the
/// cell puts out, and its end, sends what is held first, so the order stays.
/// </summary>
public sealed class StreamBuffer(Exchange exchange)
{
    private const int FullAt = 32 * 1024;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(40);

    private readonly StringBuilder _text = new();
    private readonly Lock _lock = new();
    private bool _isError;

    /// <summary>Takes text.</summary>
    public void Write(string text, bool isError)
    {
        lock (_lock)
        {
            if (isError != _isError)
            {
                Flush();
                _isError = isError;
            }

            if (_text.Length == 0)
            {
                _ = FlushSoonAsync();
            }

            _text.Append(text);
            if (_text.Length >= FullAt)
            {
                Flush();
            }
        }
    }

    /// <summary>Sends what is held.</summary>
    public void Flush()
    {
        lock (_lock)
        {
            if (_text.Length > 0)
            {
                exchange.Publish("stream", new StreamText(_isError ? "stderr" : "stdout", _text.ToString()), WireJson.Plain.StreamText);
                _text.Clear();
            }
        }
    }

    private async Task FlushSoonAsync()
    {
        await Task.Delay(Pause).ConfigureAwait(false);
        Flush();
    }
}
