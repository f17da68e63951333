namespace SplitBatch.Lab;

/// <summary>Under which conditions the results varied that a precision figure describes (ISO 5725-1).</summary>
public enum PrecisionCondition
{
    /// <summary>One laboratory, one operator, one instrument, a short time: how well a run agrees with itself.</summary>
    Repeatability,

    /// <summary>One laboratory on different days, in different runs: how well its runs agree with each other (ISO 5725-3).</summary>
    Intermediate,

    /// <summary>Different laboratories, operators and instruments: how well laboratories agree with each other.</summary>
    Reproducibility,
}
