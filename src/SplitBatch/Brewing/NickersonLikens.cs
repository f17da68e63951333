namespace SplitBatch.Brewing;

/// <summary>Storage loss from the hop storage index.</summary>
/// <remarks>
/// Ref. Nickerson, G. B. and Likens, S. T. (1979), "Hop storage index", J. Am. Soc. Brew. Chem. 37, 184: percent of alpha plus beta
/// acids lost = 110 log10(HSI / 0.25). The slope by crop year was 101.8, 111.3, 114.5, 114.6 (standard deviation 6.1); a
/// collaborative study gave the index a coefficient of variation of 2.8 % between laboratories. The fit is for both acids together;
/// applying it to alpha acid alone is common practice, and is noted.
/// </remarks>
public static class NickersonLikens
{
    private const double Slope = 110;
    private const double SlopeDeviation = 6.1;
    private const double IndexVariation = 0.028;
    private const double Fresh = 0.25;

    /// <summary>
    /// The share of alpha plus beta acids lost at a storage index in [0.2, 2.0]; none below 0.25, and never more than all.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The index lies outside.</exception>
    public static double ShareLost(double storageIndex) =>
        Math.Clamp(Slope * Math.Log10(Guard.InRange(storageIndex, 0.2, 2.0) / Fresh) / 100, 0, 1);

    /// <summary>What a lot with a storage index still holds.</summary>
    /// <param name="lot">The lot, with its index of brew day.</param>
    /// <param name="brewDay">The day of that index; null where it is not known.</param>
    /// <exception cref="ArgumentException">The lot has no storage index.</exception>
    public static StorageLoss Loss(HopLot lot, DateOnly? brewDay = null)
    {
        ArgumentNullException.ThrowIfNull(lot);
        var index = lot.StorageIndex ?? throw new ArgumentException($"{lot.Name} has no storage index.", nameof(lot));
        var start = lot.StorageIndexAtAssay ?? Fresh;
        if (index < start - 0.02)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"{lot.Name}: a storage index of {Printed.Ratio(index)} now is below {Printed.Ratio(start)} at the assay; hops do not ")
                    + FormattableString.Invariant($"grow younger."));
        }

        var (now, then) = (1 - ShareLost(index), 1 - ShareLost(start));
        var left = then == 0 ? 0 : Math.Min(1, now / then);
        var perIndex = Slope / 100 / Math.Log(10);
        var deviation = Math.Sqrt(
            Math.Pow(SlopeDeviation / 100 * Math.Log10(Math.Max(index, start) / start), 2)
            + Math.Pow(perIndex * IndexVariation, 2) * (1 + now * now / Math.Max(1e-9, then * then)));
        return new(
            lot, brewDay, "Nickerson & Likens", "Nickerson, G. B. and Likens, S. T. (1979), J. Am. Soc. Brew. Chem. 37, 184", left,
            now <= 0 ? 1 : deviation / now,
            [
                $"{lot.Name}: the storage index tells alpha and beta acids lost together; alpha acid is taken to go at that pace.",
                .. lot.StorageIndexAtAssay is null
                    ? [$"{lot.Name}: the lot is taken as fresh (index 0.25) when its alpha acid was measured."]
                    : Array.Empty<string>(),
            ]);
    }
}
