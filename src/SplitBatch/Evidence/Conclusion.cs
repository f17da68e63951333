namespace SplitBatch.Evidence;

/// <summary>What a panel allows one to say: the four cells of two questions that were declared before pouring.</summary>
/// <remarks>"No difference shown" alone is never a conclusion, because it cannot be told from a panel that was too small.</remarks>
public enum Conclusion
{
    /// <summary>No difference is shown, and one that matters is not ruled out: the panel cannot decide.</summary>
    Inconclusive,

    /// <summary>A difference is shown; one that matters is not ruled out.</summary>
    DifferenceShown,

    /// <summary>A difference is shown, and one as large as the margin is ruled out.</summary>
    DifferenceShownWithinMargin,

    /// <summary>No difference is shown, and one as large as the margin is ruled out.</summary>
    LargerDifferenceRuledOut,
}
