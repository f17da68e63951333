namespace SplitBatch.Kernel.Cells;

/// <summary>How a cell ended.</summary>
/// <param name="Error">What went wrong, or null when nothing did.</param>
/// <param name="Interrupted">True when the cell was stopped; <paramref name="Error"/> then says so.</param>
public sealed record CellResult(CellError? Error = null, bool Interrupted = false)
{
    /// <summary>A cell that ended well.</summary>
    public static CellResult Success { get; } = new();

    /// <summary>
    /// What the trial does not hold yet, where the cell could only say so; null otherwise. Such a cell counts as ended well.
    /// </summary>
    public string? NotYet { get; init; }

    /// <summary>Whether the cell ended well.</summary>
    public bool Succeeded => Error is null;
}

/// <summary>Why a cell failed.</summary>
/// <param name="Name">The exception's type name, or <c>CompilationError</c>.</param>
/// <param name="Message">One readable sentence.</param>
/// <param name="Traceback">Lines for the reader: message first, then where in the cell. Never empty.</param>
public sealed record CellError(string Name, string Message, IReadOnlyList<string> Traceback);
