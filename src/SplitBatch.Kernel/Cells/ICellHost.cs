namespace SplitBatch.Kernel.Cells;

/// <summary>
/// The one place that runs a cell. The Jupyter protocol and the headless runner both speak to this interface and to nothing
/// behind it. One cell runs at a time; a second call to <see cref="ExecuteAsync"/> waits for the first.
/// Positions are counted in UTF-16 code units, as .NET strings are.
/// </summary>
public interface ICellHost : IAsyncDisposable
{
    /// <summary>The name by which notebooks and Jupyter know the kernel.</summary>
    const string KernelName = "splitbatch";

    /// <summary>
    /// Loads references, default namespaces and formatters. Safe to call more than once; every other member waits for it.
    /// </summary>
    Task StartAsync(CancellationToken cancellation = default);

    /// <summary>Runs one cell. Outputs go to <paramref name="sink"/> in order, all of them before the task completes.</summary>
    /// <param name="code">The cell's text.</param>
    /// <param name="sink">Receives outputs; answers questions put to the user. Called from one thread at a time.</param>
    /// <param name="cancellation">Stops the cell, as <see cref="InterruptAsync"/> does; the result then says it was interrupted.</param>
    /// <returns>How the cell ended. A failing cell is a result, not an exception.</returns>
    Task<CellResult> ExecuteAsync(string code, ICellSink sink, CancellationToken cancellation = default);

    /// <summary>
    /// What could stand at the cursor: filtered by the prefix before it, without snippet placeholders.
    /// </summary>
    /// <param name="code">The cell's text.</param>
    /// <param name="cursor">In [0, code.Length].</param>
    /// <param name="cancellation">Gives the answer up.</param>
    Task<Completions> CompleteAsync(string code, int cursor, CancellationToken cancellation = default);

    /// <summary>Signature and documentation of the thing at the cursor, or null where there is none.</summary>
    /// <param name="code">The cell's text.</param>
    /// <param name="cursor">In [0, code.Length].</param>
    /// <param name="cancellation">Gives the answer up.</param>
    Task<MimeBundle?> InspectAsync(string code, int cursor, CancellationToken cancellation = default);

    /// <summary>
    /// Whether the text is a whole cell, the start of one, or cannot become one. Answers without waiting for a running cell.
    /// </summary>
    Completeness IsComplete(string code);

    /// <summary>
    /// Stops the running cell, if any; the cell's own <see cref="ExecuteAsync"/> then returns an interrupted result.
    /// True when nothing runs any more; false when the cell is in a call that cannot be ended without a restart.
    /// </summary>
    Task<bool> InterruptAsync();
}

/// <summary>Receives what a running cell prints and shows.</summary>
public interface ICellSink
{
    /// <summary>Takes one output. What background tasks of the cell put out after its end comes here too, late.</summary>
    void Publish(CellOutput output);

    /// <summary>Puts a question to the user and waits. Throws <see cref="InvalidOperationException"/> where nobody can answer.</summary>
    /// <param name="prompt">The question, shown as it is.</param>
    /// <param name="password">True to hide what is typed.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation);
}
