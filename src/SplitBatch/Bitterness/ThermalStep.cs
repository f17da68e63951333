namespace SplitBatch.Bitterness;

/// <summary>
/// What a stretch of time at known temperatures does to alpha acid and iso-alpha acid. Both reactions are of first order, so any
/// stretch is three shares, and stretches chain.
/// </summary>
/// <param name="AlphaLeft">Share of the alpha acid that is still alpha acid at the end.</param>
/// <param name="IsoMade">Iso-alpha acid present at the end per alpha acid at the start.</param>
/// <param name="IsoLeft">Share of iso-alpha acid present at the start that is left at the end.</param>
/// <param name="Conversion">The integral of k1 over the stretch: a pure number.</param>
public readonly record struct ThermalStep(double AlphaLeft, double IsoMade, double IsoLeft, double Conversion)
{
    /// <summary>No time at all.</summary>
    public static ThermalStep None { get; } = new(1, 0, 1, 0);

    /// <summary>This stretch, then the next.</summary>
    public ThermalStep Then(ThermalStep next) => new(
        AlphaLeft * next.AlphaLeft,
        AlphaLeft * next.IsoMade + IsoMade * next.IsoLeft,
        IsoLeft * next.IsoLeft,
        Conversion + next.Conversion);
}
