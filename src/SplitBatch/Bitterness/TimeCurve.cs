namespace SplitBatch.Bitterness;

/// <summary>Which form of a formula's boil-time curve to use, where the author printed a table of bands.</summary>
public enum TimeCurve
{
    /// <summary>The smooth curve fitted to the author's table; it has no jumps for a minute more or less.</summary>
    Fit,

    /// <summary>The author's own bands of minutes.</summary>
    Table,
}
