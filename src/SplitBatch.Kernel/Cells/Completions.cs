namespace SplitBatch.Kernel.Cells;

/// <summary>What could stand at the cursor.</summary>
/// <param name="Start">Where the replaced text begins, UTF-16.</param>
/// <param name="End">Where the replaced text ends, UTF-16.</param>
/// <param name="Items">In the order to show.</param>
public sealed record Completions(int Start, int End, IReadOnlyList<Completion> Items);

/// <summary>One thing that could stand at the cursor.</summary>
/// <param name="Text">The text to put there.</param>
/// <param name="Kind">What it is: method, property, class, keyword...</param>
/// <param name="Documentation">First lines of its documentation, where known.</param>
public sealed record Completion(string Text, string Kind, string? Documentation = null);

/// <summary>Whether a text is a whole cell.</summary>
public enum Completeness
{
    /// <summary>It can run.</summary>
    Complete,

    /// <summary>More has to follow.</summary>
    Incomplete,

    /// <summary>Nothing that follows can make it right.</summary>
    Invalid,
}
