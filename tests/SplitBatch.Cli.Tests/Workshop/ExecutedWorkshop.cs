using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli.Workshop;

/// <summary>The workshop's notebooks, learner's and instructor's, each run once.</summary>
public sealed class ExecutedWorkshop : IAsyncLifetime, IDisposable
{
    private readonly DirectoryInfo output = Directory.CreateTempSubdirectory("workshop-");

    public IReadOnlyList<NotebookOutcome> Learner { get; private set; } = [];

    public IReadOnlyList<NotebookOutcome> Instructor { get; private set; } = [];

    public async Task InitializeAsync()
    {
        Learner = await Run(Repository.Path("notebooks", "workshop"), "learner");
        Instructor = await Run(Repository.Path("notebooks", "workshop", "instructor"), "instructor");
    }

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => output.Delete(recursive: true);

    /// <summary>An executed notebook.</summary>
    public Notebook Notebook(string reader, string name) =>
        Kernel.Notebooks.Notebook.Load(Path.Combine(output.FullName, reader, name + ".ipynb"));

    /// <summary>Its page.</summary>
    public string Page(string reader, string name) => File.ReadAllText(Path.Combine(output.FullName, reader, name + ".html"));

    private Task<IReadOnlyList<NotebookOutcome>> Run(string folder, string reader) =>
        BatchRunner.RunAsync(new BatchRequest([folder], Path.Combine(output.FullName, reader)) { CellLimit = TimeSpan.FromMinutes(5) });
}
