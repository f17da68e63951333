namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>status</c>: <c>starting</c>, <c>busy</c> or <c>idle</c>.</summary>
public sealed record StatusContent(string ExecutionState);
