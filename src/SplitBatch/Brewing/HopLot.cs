using System.Globalization;
using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>A lot of hops as it stands in the cold store: what it is, how much alpha acid it holds and how sure that is.</summary>
/// <example><code>HopLot.Pellets("bittering pellets", alphaPercent: 11.2) with { CropYear = 2025 }</code></example>
public sealed record HopLot
{
    /// <summary>A lot.</summary>
    /// <param name="name">What the brewer calls it; not blank.</param>
    /// <param name="form">Its form.</param>
    /// <param name="alpha">Alpha acid by weight; for an isomerised form, its iso-alpha acid.</param>
    /// <exception cref="ArgumentException">The name is blank; or a bitter form has no alpha acid; or an oil has some.</exception>
    public HopLot(string name, HopForm form, AlphaAcid alpha)
    {
        Name = Guard.NotBlank(name);
        Form = Enum.IsDefined(form) ? form : throw new ArgumentOutOfRangeException(nameof(form), $"{form} is not a hop form.");
        Alpha = (form, alpha.Percent) switch
        {
            (HopForm.Oil, > 0) => throw new ArgumentException($"{name}: a hop oil holds no alpha acid; {alpha} was given.", nameof(alpha)),
            (not HopForm.Oil, 0) =>
                throw new ArgumentException($"{name}: alpha acid is missing; write the packet's percentage, such as 5.6.", nameof(alpha)),
            (HopForm.WholeCone or HopForm.Pellet, > 30) =>
                throw new ArgumentOutOfRangeException(nameof(alpha),
                    $"{name}: {alpha} is more than cones or pellets hold (up to 30 %); is it an extract?"),
            _ => alpha,
        };
    }

    /// <summary>What the brewer calls it.</summary>
    public string Name { get; }

    /// <summary>Its form.</summary>
    public HopForm Form { get; }

    /// <summary>Alpha acid by weight (iso-alpha acid in an isomerised form) when assayed, or on the day it was aged to.</summary>
    public AlphaAcid Alpha { get; init; }

    /// <summary>How sure <see cref="Alpha"/> is; the packet's tolerance unless stated.</summary>
    public AssayUncertainty AlphaUncertainty { get; init; } = AssayUncertainty.Packet;

    /// <summary>Beta acids by weight, in percent, or null when unknown.</summary>
    public double? BetaPercent { get; init =>
        field = value is { } percent ? Guard.InRange(percent, 0.0, 60.0, nameof(BetaPercent)) : null; }

    /// <summary>
    /// How sure <see cref="BetaPercent"/> is; the packet's tolerance unless stated. Beta acids enter no bitterness estimate: what they
    /// oxidise to is bitter and is not in the published formulas. They count in the lot's description and in its plant matter.
    /// </summary>
    public AssayUncertainty BetaUncertainty { get; init; } = AssayUncertainty.Packet;

    /// <summary>Year of harvest.</summary>
    public int? CropYear { get; init => field = value is { } year ? Guard.InRange(year, 1950, 2100, nameof(CropYear)) : null; }

    /// <summary>Day on which <see cref="Alpha"/> was measured.</summary>
    public DateOnly? AssayDate { get; init; }

    /// <summary>Temperature of the store, in [−40, 45] °C.</summary>
    public Temperature? Storage
    {
        get;
        init => field = value is not { } given || given.DegreesCelsius is >= -40 and <= 45
            ? value
            : throw new ArgumentOutOfRangeException(nameof(Storage), FormattableString.Invariant(
                $"{Name}: a store at {Printed.Chosen(given.DegreesCelsius)} °C is outside −40 to 45 °C; were degrees Fahrenheit given as ")
                    + FormattableString.Invariant($"Celsius?"));
    }

    /// <summary>How it is kept from air.</summary>
    public Packaging? Packaging { get; init; }

    /// <summary>Hop storage index on brew day: absorbance at 275 nm over 325 nm, in [0.2, 2.0]; about 0.25 when fresh.</summary>
    public double? StorageIndex { get; init => field = value is { } index ? Guard.InRange(index, 0.2, 2.0, nameof(StorageIndex)) : null; }

    /// <summary>Hop storage index when <see cref="Alpha"/> was measured; null when it was not, and the lot counts as fresh then.</summary>
    public double? StorageIndexAtAssay { get; init =>
        field = value is { } index ? Guard.InRange(index, 0.2, 2.0, nameof(StorageIndexAtAssay)) : null; }

    /// <summary>The share of alpha acid that this variety loses in six months, open, at 20 °C: 0.35 for 35 %.</summary>
    public double? LossInSixMonths { get; init =>
        field = value is { } share ? Guard.InRange(share, 0.0, 0.95, nameof(LossInSixMonths)) : null; }

    /// <summary>
    /// The day that <see cref="Alpha"/> was aged to by a storage model; null for alpha acid as assayed. See <see cref="On"/>.
    /// </summary>
    public DateOnly? AgedTo { get; init; }

    /// <summary>The storage model that aged <see cref="Alpha"/>; null for alpha acid as assayed.</summary>
    public string? AgedBy { get; init; }

    /// <summary>
    /// Standard uncertainty of what storage has left, as a share of <see cref="Alpha"/>; zero for alpha acid as assayed.
    /// </summary>
    public double StorageUncertainty { get; init => field = Guard.Share(value, nameof(StorageUncertainty)); }

    /// <summary>Price of a kilogram, in whatever currency all lots share.</summary>
    public decimal? PricePerKilogram { get; init =>
        field = value is { } price ? Guard.NotNegative(price, nameof(PricePerKilogram)) : null; }

    /// <summary>Whole cones from the packet's percentage.</summary>
    public static HopLot Cones(string name, double alphaPercent) => new(name, HopForm.WholeCone, AlphaAcid.FromPercent(alphaPercent));

    /// <summary>Standard pellets from the packet's percentage.</summary>
    public static HopLot Pellets(string name, double alphaPercent) => new(name, HopForm.Pellet, AlphaAcid.FromPercent(alphaPercent));

    /// <summary>Lupulin-enriched pellets from the packet's percentage.</summary>
    public static HopLot LupulinPellets(string name, double alphaPercent) =>
        new(name, HopForm.LupulinPellet, AlphaAcid.FromPercent(alphaPercent));

    /// <summary>Carbon dioxide extract from the label's percentage.</summary>
    public static HopLot Extract(string name, double alphaPercent) => new(name, HopForm.Co2Extract, AlphaAcid.FromPercent(alphaPercent));

    /// <summary>Isomerised extract for dosing after the boil, from the label's percentage of iso-alpha acid.</summary>
    public static HopLot IsoExtract(string name, double isoAlphaPercent) =>
        new(name, HopForm.IsoExtract, AlphaAcid.FromPercent(isoAlphaPercent));

    /// <summary>Hop oil: no bitterness.</summary>
    public static HopLot Oil(string name) => new(name, HopForm.Oil, default);

    /// <summary>
    /// The lot as it stands on brew day, aged by the best published model its data allow; see <see cref="StorageLoss"/> for the interval.
    /// </summary>
    /// <exception cref="ArgumentException">The brew day is before the assay, or the lot is aged already.</exception>
    public HopLot On(DateOnly brewDay) => StorageLoss.Of(this, brewDay).OnBrewDay;

    /// <summary>Grams of leaf and strig in a mass of the lot: what is neither alpha nor beta acid; none in extracts and oils.</summary>
    internal double PlantShare(HopForms forms) =>
        forms[Form].HasPlantMatter ? Math.Max(0, 1 - Alpha.Fraction - (BetaPercent ?? 0) / 100) : 0;

    /// <summary>
    /// For example <c>cones (whole cones, 5.3 ± 0.3 % alpha acid, 4.1 ± 0.2 % beta acid, crop 2025)</c>; the ranges are 95 %.
    /// </summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Name} ({Form.InWords()}{AlphaText}{BetaText}{(CropYear is { } year ? $", crop {year}" : "")})");

    private string AlphaText => Form == HopForm.Oil ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $", {Printed.HopAcid(Alpha.Percent).Bare} ± {Printed.HopAcid(AlphaUncertainty.HalfWidth95(Alpha.Percent))} alpha "
            + $"acid{(AgedTo is { } day ? $" on {day:yyyy-MM-dd}" : "")}");

    private string BetaText => BetaPercent is { } beta
        ? string.Create(CultureInfo.InvariantCulture,
            $", {Printed.HopAcid(beta).Bare} ± {Printed.HopAcid(BetaUncertainty.HalfWidth95(beta))} beta acid")
        : "";
}
