using System.Collections.Immutable;
using System.Globalization;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>What one model says of a dose, and what it would say if one thing were different.</summary>
/// <param name="Model">The model's name.</param>
/// <param name="Bitterness">Its estimate, in IBU.</param>
/// <param name="AgainstFirst">Its estimate over that of the first model compared.</param>
/// <param name="GravityEffect">What the wort's gravity does in this model: estimate over the estimate for the same boil at 1.050, less 1
/// (−0.08 is 8 % less).</param>
/// <param name="StandEffect">What time after flame-out does: estimate over the estimate for wort cooled at once, less 1; 0 without such
/// time, null where all bitterness comes from it.</param>
/// <param name="AltitudeEffect">What the altitude does: estimate over the estimate at the sea, less 1.</param>
/// <param name="InRange">Whether the dose is within the model's range.</param>
/// <param name="Why">Why it differs from the others, in words.</param>
/// <param name="Citation">Where the model is published.</param>
public sealed record ModelComparisonRow(
    string Model, double Bitterness, double AgainstFirst, double GravityEffect, double? StandEffect, double AltitudeEffect, bool InRange,
    string Why, string Citation)
{
    /// <summary>For example <c>Garetz: 21.4 IBU, 0.67 of the first; ...</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Model}: {Printed.Bitterness(Bitterness)} IBU, {Printed.Ratio(AgainstFirst)} times the "
            + $"first. {Why}");
}

/// <summary>One dose, seen by several models: rows for a table and a chart.</summary>
/// <example><code>ModelComparison.Of(kettle, charges)</code></example>
public sealed record ModelComparison
{
    private ModelComparison(ImmutableArray<ModelComparisonRow> rows) => Rows = rows;

    /// <summary>One row for each model, in the order compared.</summary>
    public ImmutableArray<ModelComparisonRow> Rows { get; }

    /// <summary>The lowest estimate, in IBU.</summary>
    public double Lowest => Rows.Min(row => row.Bitterness);

    /// <summary>The highest estimate, in IBU.</summary>
    public double Highest => Rows.Max(row => row.Bitterness);

    /// <summary>Compares models on one half's charges.</summary>
    /// <param name="kettle">The kettle of one half.</param>
    /// <param name="charges">Its charges.</param>
    /// <param name="models">The models; all of <see cref="BitternessModels.All"/> unless given.</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <exception cref="ArgumentException">A charge cannot belong to this kettle, or there is no model.</exception>
    public static ModelComparison Of(Kettle kettle, IEnumerable<HopCharge> charges, IEnumerable<IBitternessModel>? models = null,
        HopForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        ImmutableArray<HopCharge> given = [.. charges];
        ImmutableArray<IBitternessModel> all = [.. models ?? BitternessModels.All];
        if (all.IsEmpty) throw new ArgumentException("Give at least one model to compare.", nameof(models));
        Dose Of(IBitternessModel model, Kettle changed) => new(changed, given, model, forms ?? HopForms.Default);
        double Value(IBitternessModel model, Kettle changed) => Of(model, changed).Bitterness();
        var first = Value(all[0], kettle);
        return new([.. all.Select(model =>
        {
            var value = Value(model, kettle);
            var usual = Value(model, AtGravity(kettle, 1.050));
            var sea = Value(model, kettle with { Altitude = UnitsNet.Length.Zero });
            var cooled = kettle.AfterBoil is null ? value : Cooled(kettle, given, model, forms ?? HopForms.Default);
            return new ModelComparisonRow(
                model.Name, value, Over(value, first) + 1, Over(value, usual),
                kettle.AfterBoil is not null && cooled == 0 ? null : Over(value, cooled), Over(value, sea),
                model.Range.Contains(kettle, Of(model, kettle).Modelled), model.Character, model.Citation);
        })]);
    }

    /// <summary>
    /// Each model's curve of utilisation against minutes in the boil, cones, for 1 g/L of hops with 5 % alpha acid: the rows of a chart.
    /// </summary>
    /// <param name="kettle">The kettle; the curves end with its boil.</param>
    /// <param name="models">The models; all of <see cref="BitternessModels.All"/> unless given.</param>
    /// <param name="stepMinutes">Distance between points, in [0.1, 60] min.</param>
    public static ImmutableArray<UtilisationPoint> Curves(Kettle kettle, IEnumerable<IBitternessModel>? models = null,
        double stepMinutes = 1)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        var step = Guard.InRange(stepMinutes, 0.1, 60.0);
        var lot = HopLot.Cones("cones", 5);
        var mass = UnitsNet.Mass.FromGrams(kettle.FinalVolume.Liters);
        double[] minutes = [.. Enumerable.Range(0, (int)(kettle.Boil.Minutes / step) + 1).Select(i => i * step)];
        return [.. (models ?? BitternessModels.All).SelectMany(model => minutes.Select(time =>
        {
            var units = new Dose(kettle, [HopCharge.Boil(lot, mass, Math.Min(time, kettle.Boil.Minutes))], model, HopForms.Default)
                .Bitterness();
            return new UtilisationPoint(model.Name, time, units / (1000 * lot.Alpha.Fraction));
        }))];
    }

    /// <summary>
    /// For example <c>Tinseth 32.0, Rager 42.8, Garetz 26.1, Kinetics 40.5 IBU: from 26.1 to 42.8 for the same beer</c>.
    /// </summary>
    public override string ToString()
    {
        var rows = Rows.Select(row => string.Create(CultureInfo.InvariantCulture, $"{row.Model} {Printed.Bitterness(row.Bitterness)}"));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(", ", rows)} IBU: from {Printed.Bitterness(Lowest)} to {Printed.Bitterness(Highest)} for the same beer");
    }

    private static double Over(double value, double other) => other == 0 ? 0 : value / other - 1;

    /// <summary>The kettle with its wort's mean gravity moved, evaporation unchanged.</summary>
    private static Kettle AtGravity(Kettle kettle, double mean) =>
        kettle with
        {
            Gravity =
                Gravity.FromSpecific(1 + (kettle.Gravity.Specific - 1) * ((mean - 1) / Math.Max(1e-9, kettle.MeanGravity.Specific - 1))),
        };

    /// <summary>Bitterness if the wort were cooled at once: charges after flame-out then meet no heat.</summary>
    private static double Cooled(Kettle kettle, ImmutableArray<HopCharge> charges, IBitternessModel model, HopForms forms) => new Dose(
        kettle with { AfterBoil = null },
        [.. charges.Where(charge => charge.Stage is not (AdditionStage.Whirlpool or AdditionStage.Cooling))],
        model,
        forms).Bitterness();
}

/// <summary>A point on a model's curve of utilisation against boil time.</summary>
/// <param name="Model">The model's name.</param>
/// <param name="Minutes">Minutes in the boil.</param>
/// <param name="Utilisation">Share of the alpha acid of whole cones that counts as bitterness in the beer.</param>
public readonly record struct UtilisationPoint(string Model, double Minutes, double Utilisation);
