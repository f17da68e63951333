using System.Collections.Immutable;
using System.Globalization;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>
/// Two hop doses that should be equally bitter: what to weigh for each half, what rounding to the scale leaves over, and what else
/// comes with the match.
/// </summary>
/// <remarks>
/// A is solved for the target and rounded to the scale. B is then solved against A <em>as it will be weighed</em>, and rounded, so
/// that the two roundings do not add.
/// </remarks>
/// <example><code>ChargeMatch.Solve(kettle, target: 32, cones, pellets)</code></example>
public sealed partial record ChargeMatch
{
    private ChargeMatch(SideDose a, SideDose b, BitternessUnits? target, Mass scale)
    {
        A = a;
        B = b;
        Target = target;
        Scale = scale;
    }

    /// <summary>The half of the first lot.</summary>
    public SideDose A { get; }

    /// <summary>The half of the second lot.</summary>
    public SideDose B { get; }

    /// <summary>What was aimed at; null when B was matched to a given A.</summary>
    public BitternessUnits? Target { get; }

    /// <summary>What the laboratory should measure, where the target was corrected for the house; null otherwise.</summary>
    public HouseTarget? House { get; private init; }

    /// <summary>What the scale can resolve.</summary>
    public Mass Scale { get; }

    /// <summary>Whether the masses were solved for and rounded to the scale here; masses as weighed were not.</summary>
    public bool IsRounded { get; private init; }

    /// <summary>B minus A, in IBU; where masses were solved for, what rounding to the scale leaves over.</summary>
    public double Mismatch => B.Bitterness.Value - A.Bitterness.Value;

    /// <summary>Hops of A per gram of hops of B.</summary>
    public double HopMassRatio => A.HopMass / B.HopMass;

    /// <summary>Leaf and strig that A carries beyond B; negative when B carries more.</summary>
    public Mass ExtraPlantMatter => A.PlantMatter - B.PlantMatter;

    /// <summary>Wort that A's hops keep back beyond B's; negative when B's keep more.</summary>
    public Volume ExtraWortLost => A.WortHeld - B.WortHeld;

    /// <summary>What A's hops cost beyond B's, or null where a price is missing.</summary>
    public decimal? ExtraCost => A.Cost - B.Cost;

    /// <summary>What a reader should know before trusting the match: ranges left, and how the lots differ besides the variable.</summary>
    public ImmutableArray<string> Warnings =>
    [
        .. A.Estimate.Warnings.Select(text => B.Estimate.Warnings.Contains(text) ? text : $"A: {text}"),
        .. B.Estimate.Warnings.Except(A.Estimate.Warnings).Select(text => $"B: {text}"),
        .. ScaleWarnings(),
    ];

    /// <summary>Grams of two lots, each alone in its half at one time in the boil, for what the laboratory should measure.</summary>
    /// <param name="kettle">The kettle of one half; both halves are alike.</param>
    /// <param name="house">The wanted bitterness, turned into an estimate by <see cref="HouseCalibration.EstimateFor"/>. The factor must
    /// come from estimates by the same model.</param>
    /// <param name="lotA">The lot of half A.</param>
    /// <param name="lotB">The lot of half B.</param>
    /// <param name="minutes">Minutes in the boil; the whole boil when null.</param>
    /// <param name="model">Tinseth unless given.</param>
    /// <param name="scale">What the scale can resolve; 1 g unless given (0.05 oz for a kettle in US gallons).</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or no mass of a lot can reach the target.</exception>
    public static ChargeMatch Solve(
        Kettle kettle, HouseTarget house, HopLot lotA, HopLot lotB, double? minutes = null, IBitternessModel? model = null,
        Mass? scale = null, HopForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Solve(kettle, house.Estimate, lotA, lotB, minutes, model, scale, forms) with { House = house };
    }

    /// <summary>Grams of two lots, each alone in its half at one time in the boil, for a target.</summary>
    /// <param name="kettle">The kettle of one half; both halves are alike.</param>
    /// <param name="target">Bitterness aimed at, in IBU, above 0 and at most 150.</param>
    /// <param name="lotA">The lot of half A.</param>
    /// <param name="lotB">The lot of half B.</param>
    /// <param name="minutes">Minutes in the boil; the whole boil when null.</param>
    /// <param name="model">Tinseth unless given.</param>
    /// <param name="scale">What the scale can resolve; 1 g unless given (0.05 oz for a kettle in US gallons).</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or no mass of a lot can reach the target.</exception>
    /// <example><code>ChargeMatch.Solve(trial.Kettle, target: 32, trial.Lot("cones"), trial.Lot("pellets"))</code></example>
    public static ChargeMatch Solve(
        Kettle kettle, double target, HopLot lotA, HopLot lotB, double? minutes = null, IBitternessModel? model = null, Mass? scale = null,
        HopForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        var time = minutes ?? kettle.Boil.Minutes;
        return Solve(kettle, target, [Alone(lotA, time)], [Alone(lotB, time)], model, scale, forms);
    }

    /// <summary>
    /// Grams for two halves of several additions each, for a target. The masses given are proportions; fixed charges keep theirs.
    /// </summary>
    /// <param name="kettle">The kettle of one half; both halves are alike.</param>
    /// <param name="target">Bitterness aimed at, in IBU, above 0 and at most 150.</param>
    /// <param name="chargesA">Charges of half A; all that are not fixed are scaled alike.</param>
    /// <param name="chargesB">Charges of half B; all that are not fixed are scaled alike.</param>
    /// <param name="model">Tinseth unless given.</param>
    /// <param name="scale">What the scale can resolve; 1 g unless given (0.05 oz for a kettle in US gallons).</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <param name="kettleB">The kettle of half B, where it is not like A's.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or no mass can reach the target.</exception>
    public static ChargeMatch Solve(
        Kettle kettle, double target, IEnumerable<HopCharge> chargesA, IEnumerable<HopCharge> chargesB, IBitternessModel? model = null,
        Mass? scale = null, HopForms? forms = null, Kettle? kettleB = null)
    {
        if (target is not (> 0 and <= 150))
        {
            throw new ArgumentOutOfRangeException(nameof(target),
                FormattableString.Invariant($"A target of {target} IBU is outside (0, 150]."));
        }

        var step = Resolution(scale, kettle);
        var a = Round(Scaled(NewDose(kettle, chargesA, model, forms), target), step);
        return Match(a, NewDose(kettleB ?? kettle, chargesB, a.Model, a.Forms), BitternessUnits.From(target), step);
    }

    /// <summary>Grams for half B to be as bitter as half A, whose charges stand as given.</summary>
    /// <param name="kettle">The kettle of one half; both halves are alike.</param>
    /// <param name="chargesA">Charges of half A, as weighed.</param>
    /// <param name="chargesB">Charges of half B: proportions; fixed charges keep their mass.</param>
    /// <param name="model">Tinseth unless given.</param>
    /// <param name="scale">What the scale can resolve; 1 g unless given (0.05 oz for a kettle in US gallons).</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <param name="kettleB">The kettle of half B, where it is not like A's.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or no mass can match A.</exception>
    public static ChargeMatch ToMatch(
        Kettle kettle, IEnumerable<HopCharge> chargesA, IEnumerable<HopCharge> chargesB, IBitternessModel? model = null,
        Mass? scale = null, HopForms? forms = null, Kettle? kettleB = null)
    {
        var a = NewDose(kettle, chargesA, model, forms);
        return Match(a, NewDose(kettleB ?? kettle, chargesB, a.Model, a.Forms), null, Resolution(scale, kettle));
    }

    /// <summary>Two halves whose charges both stand as given: nothing is solved, only compared.</summary>
    /// <inheritdoc cref="ToMatch"/>
    public static ChargeMatch AsGiven(
        Kettle kettle, IEnumerable<HopCharge> chargesA, IEnumerable<HopCharge> chargesB, IBitternessModel? model = null,
        Mass? scale = null, HopForms? forms = null, Kettle? kettleB = null)
    {
        var a = NewDose(kettle, chargesA, model, forms);
        var b = NewDose(kettleB ?? kettle, chargesB, a.Model, a.Forms);
        return new(new(Side.A, a), new(Side.B, b), null, Resolution(scale, kettle));
    }

    /// <summary>How sure the two doses and their difference are.</summary>
    /// <inheritdoc cref="DoseUncertainty.Of"/>
    public DoseUncertainty Uncertainty(
        ErrorBudget? budget = null, int seed = 2026, int draws = 1_000_000, double level = 0.95, double? criticalDifference = null,
        double? tasteMargin = null) =>
        DoseUncertainty.Of(this, budget, seed, draws, level, criticalDifference, tasteMargin);

    /// <summary>What several models say of one half.</summary>
    /// <param name="side">The half.</param>
    /// <param name="models">The models; all of <see cref="BitternessModels.All"/> unless given.</param>
    public ModelComparison Compare(Side side, IEnumerable<IBitternessModel>? models = null)
    {
        var half = side == Side.A ? A : B;
        return ModelComparison.Of(half.Estimate.Kettle, half.Charges, models, half.Estimate.Forms);
    }

    /// <summary>
    /// For example <c>A 58 g cones and B 31 g pellets: 32.1 and 32.0 IBU by Tinseth; A carries 1.9 times the hops and 25 g more plant
    /// matter</c>.
    /// </summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"A {Weighed(A)} and B {Weighed(B)}: {Printed.Bitterness(A.Bitterness.Value)} and {Printed.Bitterness(B.Bitterness.Value)} IBU by "
            + $"{A.Estimate.Model.Name}, {Printed.Bitterness(Mismatch, "IBU").WithSign} "
            + $"{(IsRounded ? $"left by rounding to {Spoken.Short(Scale)}" : "between them as weighed")}; A carries "
            + $"{Printed.Times(HopMassRatio)} times the hops of B, {PlantText} {(ExtraPlantMatter.Grams < 0 ? "less" : "more")} plant "
            + $"matter{(House is { } house ? $"; dosed to measure {Printed.Bitterness(house.Wanted)} IBU ({house.Label})" : "")}");

    private static HopCharge Alone(HopLot lot, double minutes)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return lot.Form is HopForm.IsoExtract
            ? HopCharge.Fermenter(lot, Mass.FromGrams(1))
            : HopCharge.Boil(lot, Mass.FromGrams(1), minutes);
    }

    private static Dose NewDose(Kettle kettle, IEnumerable<HopCharge> charges, IBitternessModel? model, HopForms? forms)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        ImmutableArray<HopCharge> given = [.. charges];
        return given.IsEmpty
            ? throw new ArgumentException("A half without hop charges cannot be matched; give at least one.", nameof(charges))
            : new(kettle, given, model ?? new Tinseth(), forms ?? HopForms.Default);
    }

    /// <summary>The scale's step; by default 1 g, or 0.05 oz where the kettle is in US units.</summary>
    private static Mass Resolution(Mass? scale, Kettle kettle) =>
        scale is { } given ? CheckedScale(given) : Spoken.IsUs(kettle.Volume) ? Mass.FromOunces(0.05) : Mass.FromGrams(1);

    /// <summary>A scale's step, where it can be one.</summary>
    internal static Mass CheckedScale(Mass scale) => scale.Grams is > 0 and <= 1000
        ? scale
        : throw new ArgumentOutOfRangeException(nameof(scale),
            FormattableString.Invariant($"A scale that resolves {scale.Grams} g is outside (0, 1000] g."));

    private static ChargeMatch Match(Dose a, Dose b, BitternessUnits? target, Mass step) =>
        new(new(Side.A, a), new(Side.B, Round(Scaled(b, a.Bitterness()), step)), target, step) { IsRounded = true };

    private IEnumerable<string> ScaleWarnings()
    {
        var smallest = A.Charges.Concat(B.Charges).Where(charge => charge.Mass.Grams > 0).Select(charge => charge.Mass.Grams)
            .DefaultIfEmpty(double.MaxValue).Min();
        if (Scale.Grams / smallest > 0.05)
        {
            yield return FormattableString.Invariant(
                $"The scale resolves {Spoken.Short(Scale)}, {Printed.Percent(Scale.Grams / smallest)} of the smallest charge; weigh on a ")
                    + FormattableString.Invariant($"finer one.");
        }
    }

    private static string Weighed(SideDose side) =>
        string.Join(" + ", side.Charges.Select(charge => $"{Spoken.Short(charge.Mass)} {charge.Lot.Name}"));

    private string PlantText =>
        Printed.RoughMass(ExtraPlantMatter.Abs(), Spoken.IsUs(ExtraPlantMatter) ? UnitSystem.Us : UnitSystem.Metric);
}
