using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>history_request</c>.</summary>
public sealed record HistoryRequest(
    string HistAccessType = "tail",
    bool Output = false,
    bool Raw = true,
    int Session = 0,
    int? Start = null,
    int? Stop = null,
    int? N = null,
    string? Pattern = null,
    bool Unique = false);

/// <summary><c>history_reply</c>: rows of session, line, and input or the pair of input and output.</summary>
public sealed record HistoryReply(IReadOnlyList<JsonArray> History)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}
