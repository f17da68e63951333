namespace SplitBatch.Lab;

/// <summary>What is known of a method's precision: within one run, between runs, between laboratories.</summary>
/// <param name="Repeatability">The repeatability figure, if known.</param>
/// <param name="Reproducibility">The reproducibility figure, if known.</param>
public sealed record LabPrecision(Precision? Repeatability, Precision? Reproducibility = null)
{
    /// <summary>The intermediate precision of one laboratory's runs, if known.</summary>
    public Precision? Intermediate { get; init; }

    /// <summary>From one figure, put where its condition says.</summary>
    public static LabPrecision Of(Precision precision)
    {
        ArgumentNullException.ThrowIfNull(precision);
        return precision.Condition switch
        {
            PrecisionCondition.Repeatability => new(precision),
            PrecisionCondition.Intermediate => new(Repeatability: null) { Intermediate = precision },
            _ => new(null, precision),
        };
    }

    /// <summary>The figures in words, or that none is known.</summary>
    public override string ToString()
    {
        string[] known = [.. new[] { Repeatability, Intermediate, Reproducibility }.OfType<Precision>().Select(one => one.ToString())];
        return known.Length == 0 ? "no precision stated" : string.Join("; ", known);
    }
}
