using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Requests;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary><c>complete_request</c>; the position counts code points, null means the end.</summary>
public sealed record CompleteRequest(string Code = "", int? CursorPos = null);

/// <summary><c>complete_reply</c>; positions count code points.</summary>
public sealed record CompleteReply(IReadOnlyList<string> Matches, int CursorStart, int CursorEnd, CompleteMetadata Metadata)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}

/// <summary>What front ends show beside each match.</summary>
public sealed record CompleteMetadata(
    [property: System.Text.Json.Serialization.JsonPropertyName("_jupyter_types_experimental")] IReadOnlyList<CompleteType> Types);

/// <summary>One match and its kind.</summary>
public sealed record CompleteType(string Text, string Type, int Start, int End);

/// <summary><c>inspect_request</c>; the position counts code points, null means the end.</summary>
public sealed record InspectRequest(string Code = "", int? CursorPos = null, int DetailLevel = 0);

/// <summary><c>inspect_reply</c>.</summary>
public sealed record InspectReply(bool Found, [property: JsonConverter(typeof(BundleConverter))] MimeBundle Data)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";

    /// <summary>Always empty.</summary>
    public EmptyContent Metadata { get; } = new();
}

/// <summary><c>is_complete_request</c>.</summary>
public sealed record IsCompleteRequest(string Code = "");

/// <summary><c>is_complete_reply</c>; the indent is for the next line, with <c>incomplete</c> only.</summary>
public sealed record IsCompleteReply(string Status, string? Indent);

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
