using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Liking;

/// <summary>One taster's ratings of one attribute in both beers, on one scale.</summary>
/// <param name="Taster">Who.</param>
/// <param name="Attribute">What was rated: bitterness, liking ...</param>
/// <param name="A">The rating of beer A.</param>
/// <param name="B">The rating of beer B.</param>
/// <param name="WasCorrect">Whether the taster's answer to the difference question was right; null where it is not known.</param>
public sealed record Rating(string Taster, string Attribute, double A, double B, bool? WasCorrect = null);

/// <summary>Whose ratings are compared.</summary>
public enum RatingGroup
{
    /// <summary>All tasters.</summary>
    All,

    /// <summary>Tasters whose answer to the difference question was right. Some of them guessed.</summary>
    Correct,
}

/// <summary>Both beers compared on one attribute, taster by taster.</summary>
/// <param name="Attribute">What was rated.</param>
/// <param name="Group">Whose ratings.</param>
/// <param name="Tasters">How many.</param>
/// <param name="MeanA">Mean rating of A.</param>
/// <param name="MeanB">Mean rating of B.</param>
/// <param name="Difference">Mean of B minus A.</param>
/// <param name="DifferenceInterval">Student's interval of the mean difference; null below two tasters.</param>
/// <param name="TValue">Paired t; null where it is not defined.</param>
/// <param name="TPValue">Two-sided p of the paired t-test; 1 where every difference is zero.</param>
/// <param name="Ranks">Wilcoxon's signed-rank test.</param>
/// <param name="Higher">Binomial test of how many rated B above A, ties left out.</param>
public sealed record RatingComparison(
    string Attribute, RatingGroup Group, int Tasters, double MeanA, double MeanB, double Difference, Interval? DifferenceInterval,
    double? TValue, double TPValue, SignedRanks Ranks, PreferenceTest Higher)
{
    /// <summary>
    /// The p-value of <see cref="Ranks"/> after Holm's correction over all questions asked together; the plain one where it was asked
    /// alone.
    /// </summary>
    public double AdjustedPValue { get; init; } = Ranks.PValue;

    /// <summary>How many questions were asked together.</summary>
    public int Questions { get; init; } = 1;

    /// <summary>Compares both beers on one attribute.</summary>
    /// <param name="ratings">One rating for each taster, all of one attribute; at least one.</param>
    /// <param name="group">Whose ratings they are.</param>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No ratings, several attributes, a taster twice, or a rating that is not a finite
    /// number.</exception>
    public static RatingComparison Of(IEnumerable<Rating> ratings, RatingGroup group = RatingGroup.All, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        Guard.OpenShare(level);
        Rating[] rows = [.. ratings];
        if (rows.Length == 0) throw new ArgumentException("There are no ratings to compare.", nameof(ratings));
        if (rows.Select(r => r.Attribute).Distinct().Skip(1).Any())
            throw new ArgumentException($"Ratings of {rows[0].Attribute} and "
                + $"{rows.First(r => r.Attribute != rows[0].Attribute).Attribute} cannot be compared as one.", nameof(ratings));
        if (rows.GroupBy(r => r.Taster).FirstOrDefault(g => g.Skip(1).Any()) is { } twice)
            throw new ArgumentException($"{twice.Key} rated {rows[0].Attribute} more than once; keep one, or the mean of them.",
                nameof(ratings));
        if (rows.FirstOrDefault(r => !double.IsFinite(r.A) || !double.IsFinite(r.B)) is { } bad)
            throw new ArgumentException($"The rating of {bad.Attribute} by {bad.Taster} is not a number.", nameof(ratings));

        double n = rows.Length;
        double[] differences = [.. rows.Select(r => r.B - r.A)];
        var mean = differences.Average();
        var higher = PreferenceTest.Of(rows.Count(r => r.A > r.B), rows.Count(r => r.B > r.A), rows.Count(r => r.A == r.B));
        Interval? interval = null;
        double? t = null;
        var p = 1.0;
        if (rows.Length > 1)
        {
            var error = Math.Sqrt(differences.Sum(d => (d - mean) * (d - mean)) / (n - 1) / n);
            var half = StudentT.InvCDF(0, 1, n - 1, 1 - ((1 - level) / 2)) * error;
            interval = new(mean - half, mean + half, level);
            if (error > 0)
            {
                t = mean / error;
                p = 2 * StudentT.CDF(0, 1, n - 1, -Math.Abs(t.Value));
            }
            else if (mean != 0)
            {
                p = 0;
            }
        }

        return new(rows[0].Attribute, group, rows.Length, rows.Average(r => r.A), rows.Average(r => r.B), mean, interval, t, p,
            SignedRanks.Of(differences), higher);
    }

    /// <summary>
    /// Compares both beers on every attribute, among all tasters and among those who answered right, with Holm's correction over all
    /// these questions.
    /// </summary>
    /// <param name="ratings">Ratings of any number of attributes.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <returns>All tasters first, then correct tasters, attributes in the order in which they first appear. Attributes that no correct
    /// taster rated have no second row.</returns>
    /// <exception cref="ArgumentException">As for <see cref="Of"/>.</exception>
    public static IReadOnlyList<RatingComparison> OfAll(IEnumerable<Rating> ratings, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        Rating[] rows = [.. ratings];
        var plain = new[] { RatingGroup.All, RatingGroup.Correct }
            .SelectMany(group => rows.Where(r => group == RatingGroup.All || r.WasCorrect == true).GroupBy(r => r.Attribute)
                .Select(g => Of(g, group, level)))
            .ToArray();
        var adjusted = Holm.Adjust([.. plain.Select(c => c.Ranks.PValue)]);
        return [.. plain.Select((c, i) => c with { AdjustedPValue = adjusted[i], Questions = plain.Length })];
    }

    /// <summary>
    /// For example <c>bitterness, 24 tasters: B minus A +0.8 (0.2 to 1.4, 95 %); p = 0.011, after correction for 6 questions p = 0.066:
    /// not shown, which does not mean the same.</c>
    /// </summary>
    public override string ToString()
    {
        var who = Group == RatingGroup.All ? $"{Tasters} tasters" : $"{Tasters} tasters who were right (some by guessing)";
        var interval = DifferenceInterval is { } i
            ? FormattableString.Invariant($" ({Printed.Rating(i.Low).WithSign} to {Printed.Rating(i.High).WithSign}, ")
                + FormattableString.Invariant($"{Printed.ChosenPercent(i.Level)})")
            : "";
        var corrected = Questions > 1 ? $", after correction for {Questions} questions {Printed.PValue(AdjustedPValue)}" : "";
        var outcome = AdjustedPValue <= 0.05 ? "a difference is shown." : "no difference shown, which does not mean the same.";
        return FormattableString.Invariant($"{Attribute}, {who}: B minus A {Printed.Rating(Difference).WithSign}{interval}; ")
            + FormattableString.Invariant($"{Printed.PValue(Ranks.PValue)}{corrected}: {outcome}");
    }
}
