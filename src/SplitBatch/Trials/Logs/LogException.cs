namespace SplitBatch.Trials.Logs;

/// <summary>A row could not be logged; nothing was written.</summary>
public sealed class LogException : Exception
{
    /// <summary>Without a fault; needed by convention.</summary>
    public LogException()
        : base("The row was not logged.")
    {
    }

    /// <summary>With a sentence that says why.</summary>
    public LogException(string message)
        : base(message)
    {
    }

    /// <summary>With a sentence that says why, and the cause.</summary>
    public LogException(string message, Exception inner)
        : base(message, inner)
    {
    }

    internal LogException(Fault fault)
        : base($"The row was not logged. {fault}") => Fault = fault;

    /// <summary>What is wrong, where it is of one file, row or column.</summary>
    public Fault? Fault { get; }
}
