using System.Globalization;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

/// <summary>Where a formula was made to hold.</summary>
/// <param name="LowestGravity">Lowest mean gravity of the boil.</param>
/// <param name="HighestGravity">Highest mean gravity of the boil.</param>
/// <param name="LongestMinutes">Longest boil of a charge, in minutes.</param>
/// <param name="Source">Where these limits come from.</param>
public sealed record ValidRange(double LowestGravity, double HighestGravity, double LongestMinutes, string Source)
{
    /// <summary>Grams of hops per litre above which every formula here is a guess (common practice, no source).</summary>
    public const double HighestRate = 8;

    /// <summary>
    /// Lowest temperature of the boil that the formula holds for; null where it corrects for altitude itself. Formulas fitted near
    /// sea level name 98 °C, about 600 m up, where alpha acid isomerises 16 % more slowly (a judgement, no source).
    /// </summary>
    public Temperature? LowestBoil { get; init; }

    /// <summary>
    /// Whether the formula itself follows hops in hot wort after flame-out; otherwise that time is counted as minutes of boil, and a
    /// warning says so.
    /// </summary>
    public bool CoversStand { get; init; }

    /// <summary>Whether a boil and the charges in it lie within the range.</summary>
    /// <param name="kettle">The kettle.</param>
    /// <param name="charges">The charges that the formula speaks of.</param>
    public bool Contains(Kettle kettle, IEnumerable<HopCharge> charges)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        return Holds(kettle.MeanGravity) && Holds(kettle.BoilingTemperature)
            && charges.All(charge => Exposure.Of(kettle, charge).EquivalentMinutes <= LongestMinutes);
    }

    /// <summary>For example <c>mean gravity 1.030 to 1.130, up to 120 min, boiling at 98 °C or more</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"mean gravity {Printed.Gravity(LowestGravity)} to {Printed.Gravity(HighestGravity)}, up to {Printed.Chosen(LongestMinutes)} "
            + $"min{(LowestBoil is { } boil ? $", boiling at {Printed.Chosen(boil.DegreesCelsius)} °C or more" : "")} ({Source})");

    internal bool Holds(Gravity mean) => mean.Specific >= LowestGravity && mean.Specific <= HighestGravity;

    internal bool Holds(Temperature boil) => LowestBoil is not { } lowest || boil.DegreesCelsius >= lowest.DegreesCelsius;
}
