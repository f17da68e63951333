namespace SplitBatch.Lab;

/// <summary>One half's estimate beside what the laboratory measured.</summary>
/// <param name="Side">Which half.</param>
/// <param name="Estimate">The estimate in IBU, above zero.</param>
/// <param name="Deviation">Its standard uncertainty in IBU, zero or more.</param>
/// <param name="Measured">The laboratory's results in BU.</param>
public sealed record EstimatedHalf(Side Side, double Estimate, double Deviation, Replicates Measured)
{
    /// <summary>The estimate in IBU.</summary>
    public double Estimate { get; init; } = Guard.Positive(Estimate);

    /// <summary>Its standard uncertainty in IBU.</summary>
    public double Deviation { get; init; } = Guard.NotNegative(Deviation);

    /// <summary>The estimate's 95 % interval.</summary>
    public Interval EstimateInterval => new(Math.Max(0, Estimate - 1.96 * Deviation), Estimate + 1.96 * Deviation);

    /// <summary>Measured over estimated.</summary>
    public double Ratio => Measured.Mean / Estimate;
}
