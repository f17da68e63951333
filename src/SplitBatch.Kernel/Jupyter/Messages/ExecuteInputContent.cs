namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>execute_input</c>: tells every client what is being run.</summary>
public sealed record ExecuteInputContent(string Code, int ExecutionCount);
