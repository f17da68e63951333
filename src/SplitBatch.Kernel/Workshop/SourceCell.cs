namespace SplitBatch.Kernel.Workshop;

/// <summary>Who gets a cell of a workshop's source.</summary>
internal enum Audience
{
    /// <summary>Learners and the instructor.</summary>
    Everybody,

    /// <summary>Learners: a cell with a blank.</summary>
    Learner,

    /// <summary>The instructor: a solution, or a note.</summary>
    Instructor,
}

/// <summary>One cell of a workshop's source.</summary>
/// <param name="IsCode">Code, or else prose.</param>
/// <param name="Audience">Who gets it.</param>
/// <param name="Text">The cell's text.</param>
/// <param name="Tag">The cell's tag in the notebook; null for none.</param>
internal sealed record SourceCell(bool IsCode, Audience Audience, string Text, string? Tag = null);
