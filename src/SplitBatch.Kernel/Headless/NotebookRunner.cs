using System.Globalization;
using System.Text.Json.Nodes;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>Runs the code cells of one notebook in order and keeps their outputs in it.</summary>
public static class NotebookRunner
{
    /// <summary>Refuses a notebook, or a cell of it, in a language that is not run here.</summary>
    /// <exception cref="NotebookException">The language is not C#.</exception>
    public static void CheckLanguage(Notebook notebook)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        if (notebook.Language is { } language && !IsCSharp(language))
        {
            throw new NotebookException(
                $"The notebook says that it is in {language}; C# is run here. If its cells are C#, choose a C# kernel for it in a "
                + $"notebook editor and save it.");
        }

        if (notebook.Cells.FirstOrDefault(c => c.Kind == CellKind.Code && c.Language is { } own && !IsCSharp(own)) is { } other)
        {
            throw new NotebookException($"Cell {other.Number} is in {other.Language}; C# is run here.");
        }
    }

    /// <summary>
    /// Runs the notebook; earlier outputs are replaced. It stops at the first cell that fails, and later cells then have no outputs.
    /// </summary>
    /// <param name="notebook">The notebook; it is changed.</param>
    /// <param name="host">A fresh kernel.</param>
    /// <param name="cellLimit">The longest a cell may run; null for no limit.</param>
    /// <param name="onCell">Told before each code cell: the cell, its number among the code cells from 1, and how many there are.</param>
    /// <param name="onWaiting">Told after each code cell that could only say that data are not there yet.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>The cell that failed, or null when all ran well.</returns>
    /// <exception cref="OperationCanceledException">The run was stopped; outputs so far are kept.</exception>
    public static async Task<CellFailure?> RunAsync(
        Notebook notebook, ICellHost host, TimeSpan? cellLimit = null, Action<NotebookCell, int, int>? onCell = null,
            Action<NotebookCell>? onWaiting = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        ArgumentNullException.ThrowIfNull(host);
        var code = notebook.Cells.Where(c => c.Kind == CellKind.Code).Select(cell => (Cell: cell, Outputs: cell.ClearOutputs())).ToList();
        var recorder = new OutputRecorder();
        try
        {
            var count = 0;
            foreach (var (cell, outputs) in code)
            {
                count++;
                onCell?.Invoke(cell, count, code.Count);
                if (string.IsNullOrWhiteSpace(cell.Source)) continue;
                cell.ExecutionCount = count;
                var (error, waits) = await RunCellAsync(cell, outputs, host, recorder, count, cellLimit, cancellation)
                    .ConfigureAwait(false);
                if (waits) onWaiting?.Invoke(cell);
                if (error is not null)
                {
                    recorder.AddError(outputs, error);
                    cancellation.ThrowIfCancellationRequested();
                    return CellFailure.Of(cell, error);
                }
            }
        }
        finally
        {
            recorder.Close();
        }

        return null;
    }

    private static async Task<(CellError? Error, bool Waits)> RunCellAsync(
        NotebookCell cell, JsonArray outputs, ICellHost host, OutputRecorder recorder, int count, TimeSpan? limit,
            CancellationToken cancellation)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        if (limit is { } time) stop.CancelAfter(time);
        var result = await host.ExecuteAsync(cell.Source, recorder.For(outputs, count), stop.Token).ConfigureAwait(false);
        if (!result.Interrupted || cancellation.IsCancellationRequested || limit is not { } allowed)
            return (result.Error, result.NotYet is not null);
        var message =
            string.Create(CultureInfo.InvariantCulture,
            $"The cell ran longer than its limit of {allowed.TotalSeconds:0.###} s and was stopped.");
        return (new CellError("TimedOut", message, [$"TimedOut: {message}"]), false);
    }

    private static bool IsCSharp(string language) => language.ToLowerInvariant() is "c#" or "csharp" or "polyglot-notebook";
}
