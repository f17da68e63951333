namespace SplitBatch.Panel;

/// <summary>How many times each beer occurs.</summary>
/// <param name="A">Times for A.</param>
/// <param name="B">Times for B.</param>
public readonly record struct SideCount(int A, int B)
{
    /// <summary>How far apart the two are.</summary>
    public int Gap => Math.Abs(A - B);

    /// <summary>For example <c>12 A, 12 B</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{A} A, {B} B");
}
