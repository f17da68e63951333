namespace SplitBatch.Trials.Files;

/// <summary>What happened to a row that was handed to a log. Once there is a receipt, the row is on the disk.</summary>
/// <param name="File">The log's file name.</param>
/// <param name="Id">The row's id.</param>
/// <param name="WasNew">False where the very same row was there already, so nothing was written.</param>
/// <param name="SetAside">Text of a row cut short earlier (by a crash or a full disk) that was moved to a file of its own, or
/// null.</param>
internal sealed record LogReceipt(string File, string Id, bool WasNew, string? SetAside = null)
{
    /// <summary>For example <c>Logged R1 in lab-returns.csv.</c></summary>
    public override string ToString() =>
        (WasNew ? $"Logged {Id} in {File}." : $"{Id} was already in {File}; nothing was written.")
        + (SetAside is null ? "" : $" An earlier row had been cut short and was never acknowledged; its text is kept in {File}.torn.");
}

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
