namespace SplitBatch.Lab;

/// <summary>A row of a log that is only ever added to: a correction is a new row that names the old one and says why.</summary>
public interface ILogged
{
    /// <summary>The row's own name, unlike any other in the log.</summary>
    string Id { get; }

    /// <summary>The row this one replaces, or null.</summary>
    string? Supersedes { get; }

    /// <summary>Why it replaces it; always given where <see cref="Supersedes"/> is.</summary>
    string? Reason { get; }
}
