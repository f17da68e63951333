namespace SplitBatch.Lab;

/// <summary>What sort of figure a laboratory gave for its precision. The same "5 %" means very different things.</summary>
public enum PrecisionKind
{
    /// <summary>Standard deviation as a percentage of the level (relative standard deviation).</summary>
    CoefficientOfVariation,

    /// <summary>Standard deviation in the analyte's own unit.</summary>
    StandardDeviation,

    /// <summary>
    /// The limit two single results stay within in 95 cases of 100: 2.8 standard deviations (r or R, r95 or R95). In the
    /// analyte's own unit, or as a percentage of the level.
    /// </summary>
    Limit95,
}
