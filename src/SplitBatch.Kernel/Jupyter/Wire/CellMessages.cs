using System.Text.Json.Serialization;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary><c>execute_request</c>. A field left out has the protocol's default.</summary>
/// <param name="Code">The cell's text.</param>
/// <param name="Silent">Run without telling anyone: no count, no history, no result.</param>
/// <param name="StoreHistory">Keep the cell in the history and count it; null means yes unless silent.</param>
/// <param name="UserExpressions">Expressions to evaluate after the cell, by name.</param>
/// <param name="AllowStdin">Whether the sender can answer questions.</param>
/// <param name="StopOnError">Whether an error drops the cells that wait behind this one.</param>
public sealed record ExecuteRequest(
    string Code = "",
    bool Silent = false,
    bool? StoreHistory = null,
    Dictionary<string, string>? UserExpressions = null,
    bool AllowStdin = true,
    bool StopOnError = true);

/// <summary><c>execute_input</c>: tells every client what is being run.</summary>
public sealed record ExecuteInputContent(string Code, int ExecutionCount);

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

/// <summary><c>input_request</c>: a question to the user.</summary>
public sealed record InputRequest(string Prompt, bool Password);

/// <summary><c>input_reply</c>: the answer.</summary>
public sealed record InputReply(string Value = "");
