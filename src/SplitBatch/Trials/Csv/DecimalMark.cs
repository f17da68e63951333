namespace SplitBatch.Trials;

/// <summary>How decimals are written in a file.</summary>
public enum DecimalMark
{
    /// <summary>As 4.7.</summary>
    Point,

    /// <summary>As 4,7.</summary>
    Comma,
}
