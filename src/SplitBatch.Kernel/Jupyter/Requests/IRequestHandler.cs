namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Serves one type of request. The router sends busy before and idle after.</summary>
public interface IRequestHandler
{
    /// <summary>The message type served.</summary>
    string MessageType { get; }

    /// <summary>Serves one request.</summary>
    Task HandleAsync(Exchange exchange, CancellationToken cancellation);
}
