namespace SplitBatch.Trials.Files;

/// <summary>The columns of a log file.</summary>
/// <param name="FileName">The file's name in the trial folder.</param>
/// <param name="Columns">Every column, in the order in which a new file gets them. The first is <c>id</c>.</param>
/// <param name="Needed">The columns without which a file is not this log.</param>
/// <param name="Numbers">The columns that hold nothing but numbers. A number in any column is written with the decimal mark of the
/// file.</param>
internal sealed record LogFormat(string FileName, IReadOnlyList<string> Columns, IReadOnlyList<string> Needed,
    IReadOnlySet<string> Numbers)
{
    /// <summary>What the laboratory returned.</summary>
    public static LogFormat LabReturns { get; } = new(
        "lab-returns.csv",
        ["id", "received", "sample", "beer", "analyte", "replicate", "value", "unit", "method", "lab", "supersedes", "reason",
            "absorbance", "blank", "dilution", "who", "run"],
        ["id", "sample", "analyte", "value", "supersedes", "reason"],
        new HashSet<string> { "value", "replicate", "absorbance", "blank", "dilution" });

    /// <summary>What was measured and noted on brewing day and after.</summary>
    public static LogFormat BatchLog { get; } = new(
        "batch-log.csv",
        ["id", "when", "who", "beer", "quantity", "value", "unit", "uncertainty", "method", "supersedes", "reason", "note"],
        ["id", "beer", "quantity", "value", "supersedes", "reason"],
        new HashSet<string> { "uncertainty" });
}
