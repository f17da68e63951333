namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>input_request</c>: a question to the user.</summary>
public sealed record InputRequest(string Prompt, bool Password);

/// <summary><c>input_reply</c>: the answer.</summary>
public sealed record InputReply(string Value = "");
