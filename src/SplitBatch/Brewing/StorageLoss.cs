using System.Collections.Immutable;
using System.Globalization;
using SplitBatch.Numbers;

namespace SplitBatch.Brewing;

/// <summary>What a lot still holds on brew day, by a published model, with an interval.</summary>
public sealed record StorageLoss
{
    private const string NoModel = "none";

    internal StorageLoss(HopLot lot, DateOnly? day, string model, string citation, double left, double relativeUncertainty,
        ImmutableArray<string> notes)
    {
        (Lot, Day, Model, Citation, Left, RelativeUncertainty, Notes) = (lot, day, model, citation, left, relativeUncertainty, notes);
    }

    /// <summary>The lot as assayed.</summary>
    public HopLot Lot { get; }

    /// <summary>The brew day; null where it is not known.</summary>
    public DateOnly? Day { get; }

    /// <summary>The model's name; <c>none</c> when too little is known of the lot.</summary>
    public string Model { get; }

    /// <summary>Where the model is published.</summary>
    public string Citation { get; }

    /// <summary>The share of the assayed alpha acid that is left, in [0, 1].</summary>
    public double Left { get; }

    /// <summary>Standard uncertainty of what is left, from the storage model alone, as a share of it.</summary>
    public double RelativeUncertainty { get; }

    /// <summary>Whether a model aged the lot; otherwise its alpha acid stands as assayed, and <see cref="Notes"/> say why.</summary>
    public bool IsAged => Model != NoModel;

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
    public HopLot OnBrewDay => IsAged
        ? Lot with { Alpha = Alpha, AlphaUncertainty = Lot.AlphaUncertainty.Of(Left),
            StorageUncertainty = Math.Min(1, RelativeUncertainty), AgedTo = Day, AgedBy = Model }
        : Lot;

    /// <summary>By the best model that the lot's data allow: the storage index if measured, otherwise Garetz's, otherwise none.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="brewDay">The day it is used, not before the assay; null where it is not known.</param>
    /// <exception cref="ArgumentException">The brew day is before the assay, or the lot is aged already.</exception>
    public static StorageLoss Of(HopLot lot, DateOnly? brewDay)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (lot.AgedBy is { } model)
            throw new ArgumentException($"{lot.Name} is aged already, by {model}; age the lot as assayed.", nameof(lot));
        if (lot.Form == HopForm.Oil) return AsAssayed(lot, brewDay, "a hop oil holds no alpha acid that could age");
        if (lot.Form is HopForm.Co2Extract or HopForm.IsoExtract or HopForm.IsomerisedPellet)
        {
            return AsAssayed(lot, brewDay, $"the published storage models are for cones and pellets, not for {lot.Form.InWords()}");
        }

        if (lot.StorageIndex is not null) return NickersonLikens.Loss(lot, brewDay);
        string[] missing =
        [
            .. brewDay is null ? ["brew day"] : Array.Empty<string>(),
            .. lot.AssayDate is null ? ["assay date"] : Array.Empty<string>(),
            .. lot.Storage is null ? ["storage temperature"] : Array.Empty<string>(),
            .. lot.Packaging is null ? ["packaging"] : Array.Empty<string>(),
            .. lot.LossInSixMonths is null ? ["loss in six months"] : Array.Empty<string>(),
        ];
        return missing.Length == 0
            ? GaretzStorage.Loss(lot, brewDay!.Value)
            : AsAssayed(lot, brewDay, $"ageing it needs a storage index of brew day, or else: {string.Join(", ", missing)}");
    }

    /// <summary>The lot as assayed, not aged, with the reason.</summary>
    internal static StorageLoss AsAssayed(HopLot lot, DateOnly? brewDay, string reason) =>
        new(lot, brewDay, NoModel, "", 1, 0, [$"{lot.Name}: the alpha acid is taken as assayed; {reason}."]);

    /// <summary>
    /// For example <c>cones: 6.4 % alpha acid on brew day of 7.0 % alpha acid assayed (92 % left, by Garetz), 5.7 to 7.1 % (95 %)</c>.
    /// </summary>
    public override string ToString() => !IsAged ? Notes[0] : string.Create(
        CultureInfo.InvariantCulture,
        $"{Lot.Name}: {Alpha} on brew day of {Lot.Alpha} assayed ({Printed.Percent(Left)} left, by {Model}), "
            + $"{Printed.Range(PercentInterval, Printed.HopAcid)} (95 %)");
}

/// <summary>How a hop lot is kept from air.</summary>
public enum Packaging
{
    /// <summary>Open or loose, air all round.</summary>
    Open,

    /// <summary>Sealed, with air inside or through a bag that lets oxygen pass.</summary>
    SealedWithAir,

    /// <summary>Oxygen barrier, under vacuum or inert gas.</summary>
    Barrier,
}
