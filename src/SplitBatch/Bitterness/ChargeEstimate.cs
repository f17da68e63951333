using System.Globalization;
using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>What one charge gives: a row of the table behind an estimate.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="GravityAtAddition">The wort's gravity when it goes in.</param>
/// <param name="EquivalentMinutes">Minutes of boil it counts for.</param>
/// <param name="Utilisation">Share of alpha acid that counts as bitterness, form factor included.</param>
/// <param name="FormFactor">Factor of its form against whole cones.</param>
/// <param name="Bitterness">Its share of the beer's bitterness.</param>
public sealed record ChargeEstimate(
    HopCharge Charge,
    Gravity GravityAtAddition,
    double EquivalentMinutes,
    double Utilisation,
    double FormFactor,
    BitternessUnits Bitterness)
{
    /// <summary>For example <c>31.0 g pellets, 60 min in the boil: 24.9 % used, 31.9 IBU</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Charge}: {Printed.Utilisation(Utilisation)} used, {Bitterness}");
}
