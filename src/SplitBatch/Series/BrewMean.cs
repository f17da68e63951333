using SplitBatch.Numbers;

namespace SplitBatch.Series;

/// <summary>
/// One number for each brew, read over brews: their mean, and what the next brew may do. The brew is the unit; counts are never pooled.
/// </summary>
/// <param name="Test">The mean with its interval, the interval for the next brew, and the p-value; Student's t with one degree of freedom
/// less than there are brews.</param>
/// <remarks>
/// The number is <see cref="BrewNumber"/>'s log-odds of right answers or a lab difference, from panels of about the same size and one
/// protocol. With the same tasters in every brew the mean holds for these people. One brew is one brew, and two are shown side by side:
/// with two, counts that tie make t miss 9 times in 100. Ref. S. H. Hurlbert (1984), Ecol. Monogr. 54, 187 (abstract read), for what is a
/// replicate.
/// </remarks>
public sealed record BrewMean(MeanTest Test)
{
    /// <summary>The fewest brews over which a mean is stated.</summary>
    public const int FewestBrews = 3;

    /// <summary>Reads numbers over brews.</summary>
    /// <param name="brews">One finite number for each brew, three brews or more.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Fewer than three brews.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the level lies outside.</exception>
    public static BrewMean Of(IReadOnlyList<double> brews, double level = 0.95)
    {
        Check(brews);
        return new(MeanTest.Of(brews, level));
    }

    /// <summary>Reads numbers over brews, their own precision left aside.</summary>
    /// <inheritdoc cref="Of(IReadOnlyList{double}, double)"/>
    public static BrewMean Of(IReadOnlyList<BrewNumber> brews, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(brews);
        return Of([.. brews.Select(brew => brew.Value)], level);
    }

    /// <summary>Refuses fewer brews than a mean is stated over.</summary>
    /// <exception cref="ArgumentException">There are fewer than three.</exception>
    internal static void Check(IReadOnlyList<double> brews)
    {
        ArgumentNullException.ThrowIfNull(brews);
        if (brews.Count < FewestBrews)
            throw new ArgumentException($"A mean over brews is stated from {FewestBrews} brews on; {brews.Count} given. Show them "
                + $"one by one.", nameof(brews));
    }

    /// <summary>For example <c>mean 1.27 over 3 brews (-0.23 to 2.76, 95 %); the next brew -1.73 to 4.26</c>.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"mean {Printed.Ratio(Test.Mean)} over {Test.Count} brews ({Printed.Ratio(Test.Interval.Low)} to ")
            + FormattableString.Invariant($"{Printed.Ratio(Test.Interval.High)}, {Printed.ChosenPercent(Test.Interval.Level)}); the next ")
            + FormattableString.Invariant($"brew {Printed.Ratio(Test.Next.Low)} to {Printed.Ratio(Test.Next.High)}");
}
