namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>clear_output</c>.</summary>
public sealed record ClearOutputContent(bool Wait);
