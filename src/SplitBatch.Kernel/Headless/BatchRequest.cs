using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>What is to be run, and where the results go.</summary>
/// <param name="Paths">Notebook files, and folders of notebooks (their own, not those of folders within).</param>
/// <param name="Output">The folder for executed notebooks, pages and working copies; made when it is missing.</param>
public sealed record BatchRequest(IReadOnlyList<string> Paths, string Output)
{
    /// <summary>The trial folder to open in place of the one each notebook names; null for the notebooks' own.</summary>
    public string? Trial { get; init; }

    /// <summary>Parameters to set, by name, in every notebook that has them.</summary>
    public IReadOnlyDictionary<string, string> Set { get; init; } = new Dictionary<string, string>();

    /// <summary>The longest a cell may run; null for no limit.</summary>
    public TimeSpan? CellLimit { get; init; }
}

/// <summary>What a run tells about itself while it goes on.</summary>
public abstract record BatchProgress(int Notebook, int Notebooks, string Name);

/// <summary>A notebook begins.</summary>
public sealed record NotebookStarted(int Notebook, int Notebooks, string Name, int Cells) : BatchProgress(Notebook, Notebooks, Name);

/// <summary>A code cell begins.</summary>
public sealed record CellStarted(int Notebook, int Notebooks, string Name, int Cell, int Cells, string FirstLine)
    : BatchProgress(Notebook, Notebooks, Name);

/// <summary>A notebook has ended.</summary>
public sealed record NotebookEnded(int Notebook, int Notebooks, string Name, NotebookOutcome Outcome)
    : BatchProgress(Notebook, Notebooks, Name);
