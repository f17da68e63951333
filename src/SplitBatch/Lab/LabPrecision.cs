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

/// <summary>
/// Precision figures that were published for a method. A laboratory's own figures come first; these are for the reader who has none.
/// </summary>
public static class PublishedPrecision
{
    /// <summary>
    /// Bitterness units of beer by the EBC method, 10 to 40 BU: r = 0.05 m - 0.36 and R = 0.14 m + 0.72, 95 % limits.
    /// </summary>
    /// <remarks>
    /// Ref. MEBAK, Brautechnische Analysemethoden, 4th edition (2002), volume II, p. 114 ff., as quoted in the procedure for bitter units
    /// of an instrument maker's brewery analysis manual; the book itself was not seen. That the figures are 95 % limits is what the
    /// letters r and R mean in ISO 5725; the manual does not say so.
    /// </remarks>
    public static LabPrecision BitternessMebak2002 { get; } = new(
        Precision.GrowingWithLevel(PrecisionKind.Limit95, PrecisionCondition.Repeatability, -0.36, 0.05),
        Precision.GrowingWithLevel(PrecisionKind.Limit95, PrecisionCondition.Reproducibility, 0.72, 0.14));
}
