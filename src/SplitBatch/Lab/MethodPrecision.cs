namespace SplitBatch.Lab;

/// <summary>What is known of a method's precision: figures whose meaning is clear, a statement that leaves it open, or nothing.</summary>
public sealed record MethodPrecision
{
    private MethodPrecision(LabPrecision? known, StatedPrecision? stated) => (Known, Stated) = (known, stated);

    /// <summary>Nothing is stated.</summary>
    public static MethodPrecision Unknown { get; } = new(null, null);

    /// <summary>The figures whose meaning is clear.</summary>
    public LabPrecision? Known { get; }

    /// <summary>The statement that leaves its meaning open.</summary>
    public StatedPrecision? Stated { get; }

    /// <summary>From figures whose meaning is clear.</summary>
    public static MethodPrecision Of(LabPrecision precision) => new(precision ?? throw new ArgumentNullException(nameof(precision)), null);

    /// <summary>From one figure whose meaning is clear.</summary>
    public static MethodPrecision Of(Precision precision) => new(LabPrecision.Of(precision), null);

    /// <summary>From a statement; where it leaves nothing open, it counts as known.</summary>
    public static MethodPrecision Of(StatedPrecision stated)
    {
        ArgumentNullException.ThrowIfNull(stated);
        return stated.Readings() is [var only] ? new(LabPrecision.Of(only), stated) : new(null, stated);
    }

    /// <summary>Compares two sets of replicates as far as the precision allows.</summary>
    /// <exception cref="ArgumentException">The analytes differ.</exception>
    public LabComparison Compare(Replicates a, Replicates b) => (Known, Stated) switch
    {
        ({ } known, _) => LabComparison.Compare(known, a, b),
        (_, { } stated) => LabComparison.Compare(stated, a, b),
        _ => LabComparison.Compare(new LabPrecision(null), a, b),
    };

    /// <summary>The figures or the statement in words.</summary>
    public override string ToString() => Stated?.ToString() ?? Known?.ToString() ?? "no precision stated";
}
