namespace SplitBatch.Kernel.Notebooks;

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
public sealed record CellStarted(int Notebook, int Notebooks, string Name, int Cell, int Cells, string FirstLine) : BatchProgress(Notebook, Notebooks, Name);

/// <summary>A notebook has ended.</summary>
public sealed record NotebookEnded(int Notebook, int Notebooks, string Name, NotebookOutcome Outcome) : BatchProgress(Notebook, Notebooks, Name);

/// <summary>How one notebook ended.</summary>
/// <param name="Name">Its file name without the ending.</param>
/// <param name="Title">Its first heading, or its name.</param>
public sealed record NotebookOutcome(string Name, string Title)
{
    /// <summary>The path as it was given.</summary>
    public required string Path { get; init; }

    /// <summary>The cell that failed, if one did.</summary>
    public CellFailure? Failure { get; init; }

    /// <summary>Why the notebook could not be run at all, if so.</summary>
    public string? Problem { get; init; }

    /// <summary>How long it took.</summary>
    public TimeSpan Duration { get; init; }

    /// <summary>How many code cells it has.</summary>
    public int CodeCells { get; init; }

    /// <summary>How many code cells could only say that data are not there yet.</summary>
    public int Waiting { get; init; }

    /// <summary>The first prose after the title, as plain text; empty when there is none.</summary>
    public string Summary { get; init; } = "";

    /// <summary>Whether a page of it was written.</summary>
    public bool HasPage { get; init; }

    /// <summary>Whether every cell ran well.</summary>
    public bool Succeeded => Failure is null && Problem is null;
}
