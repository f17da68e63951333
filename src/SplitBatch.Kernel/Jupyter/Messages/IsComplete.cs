namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>is_complete_request</c>.</summary>
public sealed record IsCompleteRequest(string Code = "");

/// <summary><c>is_complete_reply</c>; the indent is for the next line, with <c>incomplete</c> only.</summary>
public sealed record IsCompleteReply(string Status, string? Indent);
