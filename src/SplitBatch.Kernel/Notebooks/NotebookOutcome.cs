using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>The cell that stopped a notebook.</summary>
/// <param name="Cell">Its place in the file, counting every kind of cell from 1.</param>
/// <param name="FirstLines">The first lines of its code.</param>
/// <param name="Error">What went wrong.</param>
public sealed record CellFailure(int Cell, IReadOnlyList<string> FirstLines, CellError Error)
{
    internal static CellFailure Of(NotebookCell cell, CellError error)
    {
        var lines = cell.Source.TrimEnd().Split('\n').SkipWhile(string.IsNullOrWhiteSpace).Select(l => l.TrimEnd('\r')).ToList();
        return new CellFailure(cell.Number, lines.Count <= 4 ? lines : [.. lines.Take(3), "…"], error);
    }
}

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
