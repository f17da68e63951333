using System.Text.Json.Serialization;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>execute_reply</c> of a cell that ended well.</summary>
public sealed record ExecuteReply(
    int ExecutionCount,
    IReadOnlyList<PagePayload> Payload,
    IReadOnlyDictionary<string, ExpressionOutcome> UserExpressions)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}

/// <summary>Something for the client to show in its pager.</summary>
public sealed record PagePayload([property: JsonConverter(typeof(BundleConverter))] MimeBundle Data)
{
    /// <summary>Always <c>page</c>.</summary>
    public string Source { get; } = "page";

    /// <summary>The first line to show.</summary>
    public int Start { get; }
}

/// <summary>What a user expression came to: a value, or an error.</summary>
public sealed record ExpressionOutcome(
    string Status,
    [property: JsonConverter(typeof(BundleConverter))] MimeBundle? Data = null,
    EmptyContent? Metadata = null,
    string? Ename = null,
    string? Evalue = null,
    IReadOnlyList<string>? Traceback = null);

/// <summary><c>execute_reply</c> of a cell that failed.</summary>
public sealed record ExecuteErrorReply(int ExecutionCount, string Ename, string Evalue, IReadOnlyList<string> Traceback)
{
    /// <summary>Always <c>error</c>.</summary>
    public string Status { get; } = "error";
}

/// <summary><c>execute_reply</c> of a cell that was dropped because one before it failed.</summary>
public sealed record ExecuteAbortedReply
{
    /// <summary>Always <c>aborted</c>.</summary>
    public string Status { get; } = "aborted";
}
