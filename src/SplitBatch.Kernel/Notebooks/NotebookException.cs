namespace SplitBatch.Kernel.Notebooks;

/// <summary>A notebook, or what was asked of it, cannot be used; the message is a sentence for the person who asked.</summary>
public sealed class NotebookException : Exception
{
    /// <inheritdoc/>
    public NotebookException()
    {
    }

    /// <inheritdoc/>
    public NotebookException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public NotebookException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
