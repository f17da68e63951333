namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>shutdown_request</c>, also sent to every client when the kernel ends.</summary>
public sealed record ShutdownContent(bool Restart = false);

/// <summary><c>shutdown_reply</c>.</summary>
public sealed record ShutdownReply(bool Restart)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}
