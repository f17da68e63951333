namespace SplitBatch.Panel;

/// <summary>One cup of a set.</summary>
/// <param name="Position">The place in the tasting order, from 1; 0 is the named reference that opens a set.</param>
/// <param name="Code">The three digits on the cup; <see cref="ReferenceCode"/> on a named reference.</param>
/// <param name="Beer">What is in it.</param>
public sealed record Cup(int Position, string Code, Side Beer)
{
    /// <summary>What stands on a named reference in place of a code.</summary>
    public const string ReferenceCode = "REF";

    /// <summary>Whether this is the named reference, which is not judged.</summary>
    public bool IsReference => Position == 0;
}
