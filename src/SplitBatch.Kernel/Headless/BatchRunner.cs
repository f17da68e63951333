using System.Diagnostics;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Kernel.Pages;

namespace SplitBatch.Kernel.Headless;

/// <summary>
/// Runs notebooks in order, each in a fresh kernel and with its own folder as the current one, and writes the executed
/// notebooks, a page of each and an index page. It stops at the first notebook that fails; what ran before is kept.
/// </summary>
/// <remarks>A process has one current folder, so of several runs in one process each waits for the one before it.</remarks>
public sealed class BatchRunner
{
    private const string EndedWhy = "The program ended while this cell ran. What later cells would have shown is not known.";

    private static readonly CellError Ended = new("ProgramEnded", EndedWhy, [$"ProgramEnded: {EndedWhy}"]);

    private readonly BatchRequest request;
    private readonly Func<ICellHost> newHost;
    private readonly Action<BatchProgress> tell;
    private readonly string output;
    private readonly WorkingCopies copies;
    private readonly WorkingFolder current;

    private BatchRunner(BatchRequest request, WorkingFolder current, Func<ICellHost> newHost, Action<BatchProgress> tell)
    {
        this.request = request;
        this.current = current;
        this.newHost = newHost;
        this.tell = tell;
        output = Path.GetFullPath(request.Output);
        copies = new WorkingCopies(output);
    }

    /// <summary>Runs the notebooks.</summary>
    /// <param name="request">What to run.</param>
    /// <param name="progress">Told what happens, on changing threads but one call at a time.</param>
    /// <param name="newHost">Makes the kernel for a notebook; the SplitBatch kernel when null.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>How each notebook that was tried ended, in order; the last one may have failed.</returns>
    /// <exception cref="NotebookException">The request cannot be met: a path, parameter or folder is wrong. Nothing was run.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped; what ran so far is kept.</exception>
    public static async Task<IReadOnlyList<NotebookOutcome>> RunAsync(
        BatchRequest request, Action<BatchProgress>? progress = null, Func<ICellHost>? newHost = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        newHost ??= () => new KernelHost(new KernelHostOptions { FreshDisplays = true });
        using var current = await WorkingFolder.BorrowAsync(cancellation).ConfigureAwait(false);
        var runner = new BatchRunner(request, current, newHost, progress ?? (_ => { }));
        return await runner.RunAsync(cancellation).ConfigureAwait(false);
    }

    private async Task<IReadOnlyList<NotebookOutcome>> RunAsync(CancellationToken cancellation)
    {
        var first = newHost();
        _ = first.StartAsync(cancellation); // Warms up while the notebooks are read; its faults come up when the first cell is run.
        var outcomes = new List<NotebookOutcome>();
        try
        {
            var notebooks = Prepare();
            for (var i = 0; i < notebooks.Count; i++)
            {
                var host = i == 0 ? first : newHost();
                await using var _ = host.ConfigureAwait(false);
                var outcome = await RunOneAsync(notebooks[i], i + 1, notebooks.Count, host, cancellation).ConfigureAwait(false);
                outcomes.Add(outcome);
                tell(new NotebookEnded(i + 1, notebooks.Count, notebooks[i].Name, outcome));
                if (!outcome.Succeeded) break;
            }

            IndexPage.Write(output, outcomes, [.. notebooks.Skip(outcomes.Count).Select(n => n.Notebook?.Title ?? n.Name)], copies.All);
            return outcomes;
        }
        finally
        {
            await first.DisposeAsync().ConfigureAwait(false);
        }
    }

    private List<PreparedNotebook> Prepare()
    {
        var files = NotebookList.Expand(request.Paths);
        if (files.FirstOrDefault(f =>
            Path.GetDirectoryName(Path.GetFullPath(f)) == Path.TrimEndingDirectorySeparator(output)) is { } inside)
        {
            throw new NotebookException(
                $"The output folder holds the notebook {inside} itself, which would be overwritten; choose another folder.");
        }

        var notebooks = files.Select(PreparedNotebook.Read).ToList();
        var names = notebooks.SelectMany(n => n.Parameters?.Names ?? []).ToHashSet();
        if (notebooks.TrueForAll(n => n.Problem is null))
        {
            if (request.Set.Keys.FirstOrDefault(k => !names.Contains(k)) is { } unknown)
            {
                var known = names.Count == 0 ? "No notebook has a cell tagged parameters."
                    : $"Parameters: {string.Join(", ", names.Order(StringComparer.Ordinal))}.";
                throw new NotebookException($"No notebook has a parameter \"{unknown}\". {known}");
            }

            if (request.Trial is not null && !names.Contains(PreparedNotebook.TrialParameter))
            {
                throw new NotebookException(
                    $"A trial folder is given, and no notebook has a parameter \"{PreparedNotebook.TrialParameter}\" to take it.");
            }
        }

        try
        {
            Directory.CreateDirectory(output);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"The output folder {request.Output} cannot be made: {error.Message}", error);
        }

        foreach (var notebook in notebooks) notebook.Inject(request, copies);
        return notebooks;
    }

    private async Task<NotebookOutcome> RunOneAsync(PreparedNotebook prepared, int number, int total, ICellHost host,
        CancellationToken cancellation)
    {
        var title = prepared.Notebook?.Title ?? prepared.Name;
        var outcome = new NotebookOutcome(prepared.Name, title) { Path = prepared.Path, Problem = prepared.Problem };
        if (prepared.Notebook is not { } notebook || prepared.Problem is not null) return outcome;

        outcome =
            outcome with { CodeCells = notebook.Cells.Count(c => c.Kind == CellKind.Code), Summary = Prose.FirstParagraph(notebook) };
        tell(new NotebookStarted(number, total, prepared.Name, outcome.CodeCells));
        var clock = Stopwatch.StartNew();
        var words = Words(prepared);
        CellFailure? failure = null;
        var waiting = 0;
        try
        {
            WorkingFolder.GoTo(prepared.Folder);
            failure = await NotebookRunner.RunAsync(
                notebook, host, request.CellLimit,
                (cell, n, of) =>
                {
                    tell(new CellStarted(number, total, prepared.Name, n, of, cell.FirstLine));
                    Draft(notebook, cell, outcome, words);
                },
                _ => waiting++,
                cancellation).ConfigureAwait(false);
        }
        finally
        {
            current.GoBack();
            words.Clean(notebook);
            if (failure is not null) failure = failure with { Error = Cleaned(failure.Error, words) };
            Write(notebook, outcome, failure);
        }

        return outcome with { Failure = failure, Duration = clock.Elapsed, Waiting = waiting, HasPage = true };
    }

    /// <summary>
    /// Writes what there is, as if the cell about to run ended the whole program: should it, this is what is left. It is written again
    /// when the cell has ended.
    /// </summary>
    private void Draft(Notebook notebook, NotebookCell cell, NotebookOutcome outcome, PathWords words)
    {
        var draft = Notebook.Parse(notebook.ToString()); // The cells still to run keep their paths.
        var last = draft.Cells[notebook.Cells.TakeWhile(c => c != cell).Count()];
        words.Clean(draft);
        OutputRecorder.AddError(last.Outputs, Ended);
        Write(draft, outcome, CellFailure.Of(last, Ended));
    }

    private void Write(Notebook notebook, NotebookOutcome outcome, CellFailure? failure)
    {
        notebook.Save(Path.Combine(output, outcome.Name + ".ipynb"));
        NotebookPage.Write(Path.Combine(output, outcome.Name + ".html"), notebook, outcome.Title, failure);
    }

    private PathWords Words(PreparedNotebook prepared)
    {
        var words = new PathWords();
        foreach (var copy in copies.All) words.Add(copy.Path, copy.Name);
        words.Add(output, ".");
        words.Add(prepared.Folder, ".");
        words.Add(Directory.GetCurrentDirectory(), ".");
        words.Add(Path.TrimEndingDirectorySeparator(Path.GetTempPath()), "temp");
        words.Add(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), "~");
        return words;
    }

    private static CellError Cleaned(CellError error, PathWords words) =>
        error with { Message = words.Clean(error.Message), Traceback = [.. error.Traceback.Select(words.Clean)] };
}
