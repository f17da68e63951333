namespace SplitBatch.Trials;

/// <summary>How decimals are written in a file.</summary>
public enum DecimalMark
{
    /// <summary>As 5.6.</summary>
    Point,

    /// <summary>As 5,6.</summary>
    Comma,
}
