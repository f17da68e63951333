namespace SplitBatch;

/// <summary>One of the two halves of a split batch.</summary>
public enum Side
{
    /// <summary>The half that is brewed as the reference.</summary>
    A,

    /// <summary>The half in which the one variable is changed.</summary>
    B,
}

/// <summary>The letters by which files name the halves.</summary>
internal static class Sides
{
    /// <summary>A and B.</summary>
    public static IReadOnlyDictionary<string, Side> ByLetter { get; } = new Dictionary<string, Side> { ["A"] = Side.A, ["B"] = Side.B };
}
