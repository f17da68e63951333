namespace SplitBatch.Lab;

/// <summary>What is known of a method's precision: within one run, between laboratories, or both.</summary>
/// <param name="Repeatability">The repeatability figure, if known.</param>
/// <param name="Reproducibility">The reproducibility figure, if known.</param>
public sealed record LabPrecision(Precision? Repeatability, Precision? Reproducibility = null)
{
    /// <summary>From one figure, put where its condition says.</summary>
    public static LabPrecision Of(Precision precision)
    {
        ArgumentNullException.ThrowIfNull(precision);
        return precision.Condition == PrecisionCondition.Repeatability ? new(precision) : new(null, precision);
    }

    /// <summary>Both figures in words, or that none is known.</summary>
    public override string ToString() => (Repeatability, Reproducibility) switch
    {
        (null, null) => "no precision stated",
        ({ } r, null) => r.ToString(),
        (null, { } big) => big.ToString(),
        ({ } r, { } big) => $"{r}; {big}",
    };
}
