using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>Where a formula was made to hold.</summary>
/// <param name="LowestGravity">Lowest mean gravity of the boil.</param>
/// <param name="HighestGravity">Highest mean gravity of the boil.</param>
/// <param name="LongestMinutes">Longest boil of a charge, in minutes.</param>
/// <param name="Source">Where these limits come from.</param>
public sealed record ValidRange(double LowestGravity, double HighestGravity, double LongestMinutes, string Source)
{
    /// <summary>Grams of hops per litre above which every formula here is a guess (common practice, no source).</summary>
    public const double HighestRate = 8;

    /// <summary>For example <c>mean gravity 1.030 to 1.130, up to 120 min</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"mean gravity {LowestGravity:0.000} to {HighestGravity:0.000}, up to {LongestMinutes:0} min ({Source})");
}
