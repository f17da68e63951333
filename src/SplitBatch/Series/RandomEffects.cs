using SplitBatch.Numbers;

namespace SplitBatch.Series;

/// <summary>One number for each brew with its own precision: the mean over brews that differ, and what the next brew may do.</summary>
/// <param name="BetweenBrews">Variance between brews, tau squared; 0 where the brews differ no more than their own precision explains,
/// which is not proof that they agree.</param>
/// <param name="Mean">The weighted mean.</param>
/// <param name="StandardError">Its standard error, with the variance factor of at least 1.</param>
/// <param name="Interval">Its interval: t with one degree of freedom less than there are brews.</param>
/// <param name="Next">The interval in which the next brew's own truth is expected.</param>
/// <param name="PValue">Two-sided, against a mean of zero.</param>
/// <param name="Brews">How many brews.</param>
/// <remarks>
/// tau squared by R. C. Paule and J. Mandel (1982), J. Res. Natl. Bur. Stand. 87, 377 (from memory). Standard error by the rule that J.
/// Hartung and G. Knapp gave, with a floor of 1 on the factor: C. Röver, G. Knapp and T. Friede (2015), BMC Med. Res. Methodol. 15, 99;
/// J. IntHout, J. P. A. Ioannidis and G. F. Borm (2014), BMC Med. Res. Methodol. 14, 25 (abstracts read). Next brew: J. P. T. Higgins, S.
/// G. Thompson and D. J. Spiegelhalter (2009), J. R. Stat. Soc. A 172, 137 (from memory), here with k - 1 degrees of freedom.
/// </remarks>
public sealed record RandomEffects(
    double BetweenBrews, double Mean, double StandardError, Interval Interval, Interval Next, double PValue, int Brews)
{
    /// <summary>Reads numbers of unequal precision over brews.</summary>
    /// <param name="brews">One finite number for each brew, three brews or more.</param>
    /// <param name="variances">The variance of each number, above zero, in the same order.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Fewer than three brews, or not as many variances.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static RandomEffects Of(IReadOnlyList<double> brews, IReadOnlyList<double> variances, double level = 0.95)
    {
        BrewMean.Check(brews);
        ArgumentNullException.ThrowIfNull(variances);
        if (variances.Count != brews.Count)
            throw new ArgumentException($"{brews.Count} brews and {variances.Count} variances: there must be one for each.",
                nameof(variances));
        foreach (var brew in brews) Guard.InRange(brew, double.MinValue, double.MaxValue, nameof(brews));
        foreach (var variance in variances) Guard.Positive(variance, nameof(variances));
        var freedom = brews.Count - 1;
        var between = PauleMandel(brews, variances);
        var (mean, weight, spread) = Weighted(brews, variances, between);
        var error = Math.Sqrt(Math.Max(1, spread / freedom) / weight);
        var t = Student.Quantile((1 + Guard.OpenShare(level)) / 2, freedom);
        double half = t * error, next = t * Math.Sqrt((error * error) + between);
        return new(
            between, mean, error, new(mean - half, mean + half, level), new(mean - next, mean + next, level),
            Student.TwoSided(mean / error, freedom), brews.Count);
    }

    /// <summary>Reads numbers of unequal precision over brews.</summary>
    /// <param name="brews">One number with its variance for each brew, three brews or more.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Fewer than three brews.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static RandomEffects Of(IReadOnlyList<BrewNumber> brews, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(brews);
        return Of([.. brews.Select(brew => brew.Value)], [.. brews.Select(brew => brew.Variance)], level);
    }

    /// <summary>For example <c>mean 1.28 over 3 brews that differ (-0.2 to 2.75, 95 %); the next brew -1.05 to 3.6</c>.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"mean {Printed.Ratio(Mean)} over {Brews} brews that {(BetweenBrews > 0 ? "differ" : "differ no more than chance explains")} ")
            + FormattableString.Invariant($"({Printed.Ratio(Interval.Low)} to {Printed.Ratio(Interval.High)}, ")
            + FormattableString.Invariant($"{Printed.ChosenPercent(Interval.Level)}); the next brew {Printed.Ratio(Next.Low)} to ")
            + FormattableString.Invariant($"{Printed.Ratio(Next.High)}");

    /// <summary>
    /// The variance between brews at which the weighted squares come to their degrees of freedom; 0 where they never exceed them.
    /// </summary>
    private static double PauleMandel(IReadOnlyList<double> brews, IReadOnlyList<double> variances)
    {
        var freedom = brews.Count - 1;
        if (Excess(0) <= 0) return 0;
        var high = 1.0;
        while (Excess(high) > 0) high *= 2;
        return Root.Of(Excess, 0, high);

        double Excess(double between) => Weighted(brews, variances, between).Spread - freedom;
    }

    private static (double Mean, double Weight, double Spread) Weighted(IReadOnlyList<double> brews, IReadOnlyList<double> variances,
        double between)
    {
        double[] weights = [.. variances.Select(variance => 1 / (variance + between))];
        var sum = weights.Sum();
        var mean = weights.Zip(brews, (w, y) => w * y).Sum() / sum;
        return (mean, sum, weights.Zip(brews, (w, y) => w * (y - mean) * (y - mean)).Sum());
    }
}
