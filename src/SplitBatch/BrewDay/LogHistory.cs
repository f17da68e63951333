namespace SplitBatch.BrewDay;

/// <summary>All rows of a log, which of them are in force, and which row replaced which, and why.</summary>
/// <typeparam name="T">The kind of row.</typeparam>
public sealed class LogHistory<T>
    where T : class, ILogged
{
    private readonly List<T> rows = [];
    private readonly Dictionary<string, T> byId = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, T> replacedBy = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<LogProblem<T>> problems = [];
    private IReadOnlyList<T>? inForce;

    /// <summary>Sorts out a log's rows, in the order in which they were logged.</summary>
    /// <param name="rows">Every row, corrections included. What is wrong goes to <see cref="Problems"/>.</param>
    public LogHistory(IEnumerable<T> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        foreach (var row in rows) Add(row);
    }

    /// <summary>Every row, in the order logged.</summary>
    public IReadOnlyList<T> Rows => rows;

    /// <summary>The rows that no later row replaces.</summary>
    public IReadOnlyList<T> InForce =>
        inForce ??= [.. rows.Where(row => !replacedBy.ContainsKey(row.Id) && ReferenceEquals(byId[row.Id], row))];

    /// <summary>What is wrong with ids and corrections.</summary>
    public IReadOnlyList<LogProblem<T>> Problems => problems;

    /// <summary>The corrections, each with the row it replaced, in the order logged.</summary>
    public IReadOnlyList<Correction<T>> Corrections =>
        [.. Rows.Where(row => row.Supersedes is { } old && replacedBy.TryGetValue(old, out var by) && ReferenceEquals(by, row))
            .Select(row => new Correction<T>(byId[row.Supersedes!], row))];

    /// <summary>The row of that id, or null.</summary>
    public T? Find(string id) => byId.GetValueOrDefault(id);

    /// <summary>The row that replaced the one of that id, or null where it is in force.</summary>
    public T? ReplacementOf(string id) => replacedBy.GetValueOrDefault(id);

    /// <summary>What would be wrong with a further row.</summary>
    internal IEnumerable<LogProblem<T>> ProblemsWith(T row)
    {
        if (byId.ContainsKey(row.Id)) yield return new(row, "id", $"The id {row.Id} is used twice; each row needs its own.");
        if (row.Supersedes is not { } old)
        {
            if (row.Reason is not null)
                yield return new(row, "reason", "A reason is given, but the row does not say which row it supersedes.");
            yield break;
        }

        if (string.IsNullOrWhiteSpace(row.Reason)) yield return new(row, "reason", $"The row supersedes {old} without a reason.");
        if (string.Equals(old, row.Id, StringComparison.OrdinalIgnoreCase))
            yield return new(row, "supersedes", "A row cannot supersede itself.");
        else if (!byId.ContainsKey(old)) yield return new(row, "supersedes", $"There is no earlier row {old} to supersede.");
        else if (replacedBy.TryGetValue(old, out var by))
            yield return new(row, "supersedes", $"{old} is already superseded by {by.Id}; supersede that one.");
    }

    /// <summary>Takes a further row.</summary>
    internal void Add(T row)
    {
        problems.AddRange(ProblemsWith(row));
        rows.Add(row);
        inForce = null;
        if (!byId.TryAdd(row.Id, row)) return;
        if (row.Supersedes is { } old && !string.Equals(old, row.Id, StringComparison.OrdinalIgnoreCase) && byId.ContainsKey(old))
            replacedBy.TryAdd(old, row);
    }
}

/// <summary>A row and the one that replaced it.</summary>
/// <typeparam name="T">The kind of row.</typeparam>
/// <param name="Old">The row replaced; it stays in the log.</param>
/// <param name="New">The row that replaces it and says why.</param>
public sealed record Correction<T>(T Old, T New)
    where T : class, ILogged
{
    /// <summary>For example <c>R1 -> R2: typing error. Was ..., is ...</c>.</summary>
    public override string ToString() => $"{Old.Id} was replaced by {New.Id}: {New.Reason}. It read: {Old}. It reads: {New}.";
}

/// <summary>Something wrong with one row of a log.</summary>
/// <typeparam name="T">The kind of row.</typeparam>
/// <param name="Row">The row.</param>
/// <param name="Column">The column at fault.</param>
/// <param name="Problem">What is wrong, as a sentence.</param>
public sealed record LogProblem<T>(T Row, string Column, string Problem)
    where T : class, ILogged;

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
