namespace SplitBatch.Kernel.Jupyter.Messages;

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
