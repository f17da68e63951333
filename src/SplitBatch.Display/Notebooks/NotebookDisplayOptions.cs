namespace SplitBatch.Display.Notebooks;

/// <summary>How values show themselves in a notebook.</summary>
public sealed record NotebookDisplayOptions
{
    /// <summary>The kernel's name, if its description folder on the Jupyter server holds <c>plotly.min.js</c>; null for none.</summary>
    public string? KernelName { get; init; }

    /// <summary>
    /// Whether every chart carries its own copy of the chart library: 3.6 MB each, works in any notebook that runs scripts.
    /// </summary>
    public bool EmbedLibrary { get; init; }

    /// <summary>The most rows of a table that are shown, at least 1.</summary>
    public int TableRows { get; init; } = 30;
}
