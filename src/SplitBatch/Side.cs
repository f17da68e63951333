namespace SplitBatch;

/// <summary>One of the two halves of a split batch.</summary>
public enum Side
{
    /// <summary>The half that is brewed as the reference.</summary>
    A,

    /// <summary>The half in which the one variable is changed.</summary>
    B,
}
