using SplitBatch.Brewing;

namespace SplitBatch.BrewDay;

/// <summary>Everything that was measured and noted about the two halves, corrections included.</summary>
public sealed class BatchLog
{
    /// <summary>The quantity names that alcohol and attenuation are worked out from.</summary>
    public const string OriginalGravity = "original gravity", FinalGravity = "final gravity";

    /// <summary>From entries, in the order logged.</summary>
    public BatchLog(IEnumerable<BatchEntry> entries) => History = new LogHistory<BatchEntry>(entries);

    /// <summary>Every entry, which are in force, and who superseded what.</summary>
    public LogHistory<BatchEntry> History { get; }

    /// <summary>The entries in force.</summary>
    public IReadOnlyList<BatchEntry> Entries => History.InForce;

    /// <summary>The quantities with an entry in force, in the order first met.</summary>
    public IReadOnlyList<string> Quantities => [.. Entries.Select(entry => entry.Quantity).Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>The entries in force of one quantity that hold for one half, those for both included.</summary>
    public IReadOnlyList<BatchEntry> Of(Side beer, string quantity) =>
        [.. Entries.Where(entry => string.Equals(entry.Quantity, quantity, StringComparison.OrdinalIgnoreCase)
            && (entry.Beer is null || entry.Beer == beer))];

    /// <summary>Alcohol, attenuation and real extract of one half by Balling's relations; null without both gravities.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The final gravity lies above the original.</exception>
    public Alcohol? Alcohol(Side beer) =>
        Gravity(beer, OriginalGravity) is { } original && Gravity(beer, FinalGravity) is { } final ? new Alcohol(original, final) : null;

    /// <summary>
    /// How strong one half is, in percent by volume: from its gravities, or else as logged under "alcohol", for instance from a label;
    /// null without either.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The final gravity lies above the original.</exception>
    public double? Strength(Side beer) => Alcohol(beer)?.PercentByVolume ?? Labelled(beer);

    /// <summary>The two halves compared line by line.</summary>
    /// <param name="variable">Quantities that the trial changes on purpose.</param>
    /// <param name="expected">Quantities that ought to be there; <see cref="ParityCheck.Expected"/> if null.</param>
    public ParityCheck Parity(IEnumerable<string>? variable = null, IEnumerable<string>? expected = null) =>
        new(this, new("", variable ?? []), expected);

    /// <summary>The two halves compared line by line.</summary>
    /// <param name="changed">What the trial changes on purpose.</param>
    public ParityCheck Parity(ChangedQuantities changed) => new(this, changed ?? throw new ArgumentNullException(nameof(changed)), null);

    /// <summary>How much there is, in a line.</summary>
    public override string ToString() =>
        $"{Entries.Count} entries on {Quantities.Count} quantities"
            + (History.Corrections.Count is > 0 and var corrections ? $"; {corrections} corrected" : "");

    private double? Labelled(Side beer)
    {
        var values = Of(beer, "alcohol").Where(entry => entry.Unit?.Common == "%").Select(entry => entry.CommonValue!.Value).ToList();
        return values.Count == 0 ? null : values.Average();
    }

    private Gravity? Gravity(Side beer, string quantity)
    {
        var values = Of(beer, quantity).Where(entry => entry.Unit?.Common == "SG").Select(entry => entry.CommonValue!.Value).ToList();
        return values.Count == 0 ? null : Brewing.Gravity.FromSpecific(values.Average());
    }
}
