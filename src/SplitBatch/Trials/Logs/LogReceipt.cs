namespace SplitBatch.Trials.Logs;

/// <summary>What happened to a row that was handed to a log. Once there is a receipt, the row is on the disk.</summary>
/// <param name="File">The log's file name.</param>
/// <param name="Id">The row's id.</param>
/// <param name="WasNew">False where the very same row was there already, so nothing was written.</param>
/// <param name="SetAside">Text of a row cut short earlier (by a crash or a full disk) that was moved to a file of its own, or null.</param>
public sealed record LogReceipt(string File, string Id, bool WasNew, string? SetAside = null)
{
    /// <summary>For example <c>Logged R1 in lab-returns.csv.</c></summary>
    public override string ToString() =>
        (WasNew ? $"Logged {Id} in {File}." : $"{Id} was already in {File}; nothing was written.")
        + (SetAside is null ? "" : $" An earlier row had been cut short and was never acknowledged; its text is kept in {File}.torn.");
}
