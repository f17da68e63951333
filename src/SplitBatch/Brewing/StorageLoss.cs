using System.Collections.Immutable;
using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>What a lot still holds on brew day, by a published model, with an interval.</summary>
public sealed record StorageLoss
{
    internal StorageLoss(HopLot lot, string model, string citation, double left, double relativeUncertainty, ImmutableArray<string> notes)
    {
        (Lot, Model, Citation, Left, RelativeUncertainty, Notes) = (lot, model, citation, left, relativeUncertainty, notes);
    }

    /// <summary>The lot as assayed.</summary>
    public HopLot Lot { get; }

    /// <summary>The model's name; <c>none</c> when too little is known of the lot.</summary>
    public string Model { get; }

    /// <summary>Where the model is published.</summary>
    public string Citation { get; }

    /// <summary>The share of the assayed alpha acid that is left, in [0, 1].</summary>
    public double Left { get; }

    /// <summary>Standard uncertainty of what is left, from the storage model alone, as a share of it.</summary>
    public double RelativeUncertainty { get; }

    /// <summary>What was assumed.</summary>
    public ImmutableArray<string> Notes { get; }

    /// <summary>Alpha acid on brew day.</summary>
    public AlphaAcid Alpha => AlphaAcid.FromFraction(Lot.Alpha.Fraction * Left);

    /// <summary>Alpha acid on brew day in percent, 95 %: assay and storage together.</summary>
    public Interval PercentInterval
    {
        get
        {
            var assay = Lot.AlphaUncertainty.RelativeTo(Lot.Alpha);
            var half = 1.96 * Math.Sqrt(assay * assay + RelativeUncertainty * RelativeUncertainty);
            return new(Math.Max(0, Alpha.Percent * (1 - half)), Alpha.Percent * (1 + half));
        }
    }

    /// <summary>The lot with its alpha acid as on brew day, for use in charges; its storage uncertainty goes with it.</summary>
    public HopLot OnBrewDay => Lot with { Alpha = Alpha, AlphaUncertainty = AssayUncertainty.Relative(Math.Min(0.5, Lot.AlphaUncertainty.RelativeTo(Lot.Alpha))), StorageUncertainty = RelativeUncertainty };

    /// <summary>By the best model that the lot's data allow: the storage index if measured, otherwise Garetz's, otherwise none.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="brewDay">The day it is used; not before the assay.</param>
    /// <exception cref="ArgumentException">The brew day is before the assay.</exception>
    public static StorageLoss Of(HopLot lot, DateOnly brewDay)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (lot.StorageIndex is not null) return NickersonLikens.Loss(lot);
        string[] missing =
        [
            .. lot.AssayDate is null ? ["assay date"] : Array.Empty<string>(),
            .. lot.Storage is null ? ["storage temperature"] : Array.Empty<string>(),
            .. lot.Packaging is null ? ["packaging"] : Array.Empty<string>(),
            .. lot.LossInSixMonths is null ? ["loss in six months"] : Array.Empty<string>(),
        ];
        return missing.Length == 0
            ? GaretzStorage.Loss(lot, brewDay)
            : new(lot, "none", "", 1, 0, [$"{lot.Name}: the alpha acid is taken as assayed; ageing it needs a storage index, or: {string.Join(", ", missing)}."]);
    }

    /// <summary>For example <c>cones: 4.7 % alpha acid on brew day of 5.1 % alpha acid assayed (92 % left, by Garetz), 4.2 to 5.2 (95 %)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Lot.Name}: {Alpha} on brew day of {Lot.Alpha} assayed ({Left * 100:0} % left, by {Model}), {PercentInterval.Low:0.0} to {PercentInterval.High:0.0} % (95 %)");
}
