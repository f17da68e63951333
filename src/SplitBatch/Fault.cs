using System.Text;

namespace SplitBatch;

/// <summary>How much a fault matters.</summary>
public enum Severity
{
    /// <summary>Legal, but dubious: the work can go on, and the reader should know.</summary>
    Warning,

    /// <summary>The value cannot be used as it stands.</summary>
    Error,
}

/// <summary>Something wrong in a file that a person wrote: where it stands, what it says, and what would be accepted.</summary>
/// <param name="File">The file's name within the trial folder.</param>
/// <param name="Problem">What is wrong, as a sentence.</param>
public sealed record Fault(string File, string Problem)
{
    /// <summary>The line in the file (the header is line 1), or null where the fault is not of one line.</summary>
    public int? Row { get; init; }

    /// <summary>The column's header, or the path of a value in a JSON file.</summary>
    public string? Column { get; init; }

    /// <summary>The text as found; null where it is missing.</summary>
    public string? Value { get; init; }

    /// <summary>What would be accepted in its place.</summary>
    public string? Accepted { get; init; }

    /// <summary>A change that would probably mend it.</summary>
    public string? Suggestion { get; init; }

    /// <summary>Whether the fault stops the work.</summary>
    public Severity Severity { get; init; } = Severity.Error;

    /// <summary>One line: file, row, column, value, problem, what is accepted, and a suggestion.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(File);
        if (Row is { } row) text.Append(", row ").Append(row);
        if (Column is { } column) text.Append(", ").Append(column);
        if (Value is { } value) text.Append(" = \"").Append(value).Append('"');
        text.Append(": ").Append(Problem);
        if (Accepted is { } accepted) text.Append(" Accepted: ").Append(accepted).Append('.');
        if (Suggestion is { } suggestion) text.Append(' ').Append(suggestion);
        return text.ToString();
    }
}
