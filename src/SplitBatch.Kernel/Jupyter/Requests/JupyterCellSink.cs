using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Turns what a cell puts out into messages.</summary>
public sealed class JupyterCellSink(Exchange exchange, StdinQuestions questions, int executionCount, bool silent, bool allowStdin)
    : ICellSink
{
    private readonly StreamBuffer _stream = new(exchange);
    private readonly List<PagePayload> _pages = [];

    /// <summary>The cell's value as plain text, once it has one.</summary>
    public string? PlainValue { get; private set; }

    /// <summary>What the client shall show in its pager.</summary>
    public IReadOnlyList<PagePayload> Pages => _pages;

    /// <inheritdoc/>
    public void Publish(CellOutput output)
    {
        if (output is TextOutput text)
        {
            _stream.Write(text.Text, text.IsError);
            return;
        }

        _stream.Flush();
        switch (output)
        {
            case DisplayOutput shown:
                exchange.Publish("display_data", new DisplayDataContent(shown.Data, new Transient(shown.DisplayId)),
                    WireJson.Plain.DisplayDataContent);
                break;
            case DisplayUpdate update:
                exchange.Publish("update_display_data", new DisplayDataContent(update.Data, new Transient(update.DisplayId)),
                    WireJson.Plain.DisplayDataContent);
                break;
            case ValueOutput value:
                PlainValue = value.Data.Forms.GetValueOrDefault("text/plain");
                if (!silent)
                {
                    exchange.Publish("execute_result", new ExecuteResultContent(executionCount, value.Data),
                        WireJson.Plain.ExecuteResultContent);
                }

                break;
            case ClearOutput clear:
                exchange.Publish("clear_output", new ClearOutputContent(clear.Wait), WireJson.Plain.ClearOutputContent);
                break;
            case PageOutput page:
                _pages.Add(new PagePayload(page.Data));
                break;
        }
    }

    /// <inheritdoc/>
    public Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation)
    {
        if (!allowStdin)
        {
            throw new InvalidOperationException("This client cannot answer questions, so the cell cannot ask for input here.");
        }

        _stream.Flush();
        return questions.AskAsync(exchange, prompt, password, cancellation);
    }

    /// <summary>Sends what is still held.</summary>
    public void Flush() => _stream.Flush();
}
