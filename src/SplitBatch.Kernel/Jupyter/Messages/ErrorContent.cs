namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>error</c>: why a cell failed.</summary>
public sealed record ErrorContent(string Ename, string Evalue, IReadOnlyList<string> Traceback);
