namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>interrupt_reply</c>.</summary>
public sealed record InterruptReply
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}
