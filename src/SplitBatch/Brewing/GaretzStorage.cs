namespace SplitBatch.Brewing;

/// <summary>Storage loss from time, temperature, packaging and how well the variety keeps.</summary>
/// <remarks>
/// Ref. Garetz, M. (1994), "Hop storage", Brewing Techniques 2(1): left = exp(−k × TF × SF × days), k = −ln(1 − loss in six months) / 180;
/// TF is 1 at 20 °C and halves for each 15 °C below (the author after Skinner, Hildebrand and Clarke (1977), J. Inst. Brewing 83, 290;
/// his page read); SF, his reading of others' data, is 1 open, 0.75 sealed with air, 0.5 in a barrier (from memory). His table stops at
/// 20 °C. No uncertainty was published; the rate is taken as sure to 30 % (a judgement, no source).
/// </remarks>
public static class GaretzStorage
{
    private const double RateUncertainty = 0.30;

    /// <summary>The share left after some days.</summary>
    /// <param name="lossInSixMonths">Share lost in six months, open, at 20 °C, in [0, 0.95].</param>
    /// <param name="celsius">Temperature of the store, in °C.</param>
    /// <param name="packaging">How it is kept.</param>
    /// <param name="days">Days kept, zero or more.</param>
    public static double ShareLeft(double lossInSixMonths, double celsius, Packaging packaging, double days) =>
        Math.Exp(-Rate(Guard.InRange(lossInSixMonths, 0.0, 0.95), celsius, packaging) * Guard.NotNegative(days));

    /// <summary>What a lot still holds on a day.</summary>
    /// <exception cref="ArgumentException">Assay date, storage temperature, packaging or loss in six months is missing, or the day is
    /// before the assay.</exception>
    public static StorageLoss Loss(HopLot lot, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (lot is not { AssayDate: { } assay, Storage: { } store, Packaging: { } packaging, LossInSixMonths: { } loss })
        {
            throw new ArgumentException($"{lot.Name}: ageing by Garetz needs assay date, storage temperature, packaging and loss in "
                + $"six months.", nameof(lot));
        }

        if (day < assay)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"{lot.Name}: brew day {day:yyyy-MM-dd} is before the assay of {assay:yyyy-MM-dd}."), nameof(day));
        }

        var days = day.DayNumber - assay.DayNumber;
        var celsius = store.DegreesCelsius;
        return new(
            lot, day, "Garetz", "Garetz, M. (1994), Hop storage, Brewing Techniques 2(1)", ShareLeft(loss, celsius, packaging, days),
            RateUncertainty * Rate(loss, celsius, packaging) * days,
            [
                FormattableString.Invariant($"{lot.Name}: {days} days at {Spoken.Of(store)}, packaging: {packaging.InWords()}; the rate ")
                    + FormattableString.Invariant($"is taken as sure to 30 % (a judgement, no source)."),
                .. celsius > 20 ? [$"{lot.Name}: the author's table stops at 20 °C; warmer is extrapolated."] : Array.Empty<string>(),
            ]);
    }

    private static double Rate(double lossInSixMonths, double celsius, Packaging packaging) =>
        -Math.Log(1 - lossInSixMonths) / 180 * Math.Pow(2, (celsius - 20) / 15) * packaging switch
        {
            Packaging.Open => 1,
            Packaging.SealedWithAir => 0.75,
            Packaging.Barrier => 0.5,
            _ => throw new ArgumentOutOfRangeException(nameof(packaging), $"{packaging} is not a way to pack hops."),
        };
}
