using SplitBatch.Kernel.Host;

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
