namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary>The reply to any request that could not be served.</summary>
public sealed record ReplyError(string Ename, string Evalue, IReadOnlyList<string> Traceback)
{
    /// <summary>Always <c>error</c>.</summary>
    public string Status { get; } = "error";
}
