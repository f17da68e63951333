using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>Runs a folder of notebooks and puts the reduced results back into them, all or none.</summary>
public static class PreviewRun
{
    private static readonly string[] Kept = ["figure-", "summary-"];

    /// <summary>Runs the notebooks, and fills them when all have run well.</summary>
    /// <param name="folder">The folder of notebooks.</param>
    /// <param name="pictures">Where the pictures of the write-up go; null for nowhere.</param>
    /// <param name="progress">Told what happens.</param>
    /// <param name="cancellation">Stops the run; no notebook is changed then.</param>
    /// <exception cref="NotebookException">The folder cannot be run, or a result is too large to keep.</exception>
    public static async Task<IReadOnlyList<NotebookOutcome>> RunAsync(
        string folder, string? pictures = null, Action<BatchProgress>? progress = null, CancellationToken cancellation = default)
    {
        var output = Directory.CreateTempSubdirectory("splitbatch-preview-");
        try
        {
            var outcomes = await BatchRunner.RunAsync(new BatchRequest([folder], output.FullName), progress, cancellation: cancellation)
                .ConfigureAwait(false);
            if (!outcomes.All(outcome => outcome.Succeeded)) return outcomes;
            var filled = outcomes.Select(outcome => (outcome.Path, Notebook: Filled(outcome, output.FullName))).ToList();
            foreach (var (path, notebook) in filled) notebook.Save(path);
            if (pictures is not null) CopyPictures(output, pictures);
            return outcomes;
        }
        finally
        {
            output.Delete(recursive: true);
        }
    }

    private static Notebook Filled(NotebookOutcome outcome, string output)
    {
        var notebook = Notebook.Load(outcome.Path);
        NotebookPreview.Fill(notebook, Notebook.Load(Path.Combine(output, outcome.Name + ".ipynb")));
        return notebook;
    }

    private static void CopyPictures(DirectoryInfo output, string pictures)
    {
        foreach (var earlier in Directory.CreateDirectory(pictures).EnumerateFiles("*.svg")
            .Where(file => Kept.Any(start => file.Name.StartsWith(start, StringComparison.Ordinal))))
        {
            earlier.Delete();
        }

        foreach (var picture in output.EnumerateFiles("*.svg", SearchOption.AllDirectories))
            picture.CopyTo(Path.Combine(pictures, picture.Name), overwrite: true);
    }
}
