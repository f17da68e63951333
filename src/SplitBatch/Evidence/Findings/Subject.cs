namespace SplitBatch.Evidence.Findings;

/// <summary>
/// What a finding is about: the trial as a whole, the doses, the batches, the lab, one panel, all panels, or several brews.
/// </summary>
public sealed record Subject
{
    private Subject(SubjectKind kind, string? name = null) => (Kind, Name) = (kind, name);

    /// <summary>The trial as a whole.</summary>
    public static Subject Trial { get; } = new(SubjectKind.Trial);

    /// <summary>The two hop doses.</summary>
    public static Subject Doses { get; } = new(SubjectKind.Doses);

    /// <summary>The two halves as brewed, by the batch log and the hop lots.</summary>
    public static Subject Batches { get; } = new(SubjectKind.Batches);

    /// <summary>What the lab returned.</summary>
    public static Subject Lab { get; } = new(SubjectKind.Lab);

    /// <summary>The panels together.</summary>
    public static Subject Panels { get; } = new(SubjectKind.Panels);

    /// <summary>Several brews of one belief.</summary>
    public static Subject Series { get; } = new(SubjectKind.Series);

    /// <summary>What kind of subject it is.</summary>
    public SubjectKind Kind { get; }

    /// <summary>The panel's name; null for other subjects.</summary>
    public string? Name { get; }

    /// <summary>One panel.</summary>
    /// <param name="name">Its name within the trial.</param>
    public static Subject Panel(string name) => new(SubjectKind.Panel, Guard.NotBlank(name));

    /// <summary>For example <c>panel main</c>.</summary>
    public override string ToString() => Name is null ? Kind.ToString().ToLowerInvariant() : $"panel {Name}";
}

/// <summary>The kinds of subject, in the order of the job.</summary>
public enum SubjectKind
{
    /// <summary>The two hop doses.</summary>
    Doses,

    /// <summary>The two halves as brewed.</summary>
    Batches,

    /// <summary>The lab's return.</summary>
    Lab,

    /// <summary>One panel.</summary>
    Panel,

    /// <summary>The panels together.</summary>
    Panels,

    /// <summary>Several brews of one belief.</summary>
    Series,

    /// <summary>The trial as a whole.</summary>
    Trial,
}
