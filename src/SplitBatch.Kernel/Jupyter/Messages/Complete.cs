namespace SplitBatch.Kernel.Jupyter.Messages;

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
