using SplitBatch.Panel;

namespace SplitBatch.Display;

/// <content>What tasters were asked beside the difference.</content>
public static partial class Tables
{
    /// <summary>Ratings and preferences among all tasters and among those who answered right, corrected together.</summary>
    /// <param name="report">The report.</param>
    public static Table Ratings(RatingReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var ratings = report.Ratings.Select(r => new Asked(
            r.Attribute, r.Group, r.Tasters, r.MeanA, r.MeanB, r.Difference, r.DifferenceInterval, r.Higher, r.TPValue, r.Ranks.PValue, r.AdjustedPValue));
        var preferences = report.Preferences.Select(p => new Asked(
            "preferred", p.Group, p.Test.ForA + p.Test.ForB + p.Test.None, null, null, null, null, p.Test, null, null, p.AdjustedPValue));
        return Table.Of(ratings.Concat(preferences), "What tasters were asked beside the difference")
            .Text("question", r => r.Question)
            .Text("tasters", r => r.Group == RatingGroup.All ? "all" : "answered right")
            .Number("number", r => r.Tasters, decimals: 0)
            .Number("mean A", r => r.MeanA)
            .Number("mean B", r => r.MeanB)
            .Number("B less A", r => r.Difference)
            .Number("from", r => r.Interval?.Low)
            .Number("to", r => r.Interval?.High)
            .Text("more for A : B", r => Charts.Invariant($"{r.Sides.ForA} : {r.Sides.ForB}"))
            .Number("p by sides", r => r.Sides.PValue, decimals: 3)
            .Number("p by t", r => r.PairedT, decimals: 3)
            .Number("p by ranks", r => r.Ranks, decimals: 3)
            .Number("corrected", r => r.Corrected, decimals: 3)
            .Note(Charts.Invariant($"By sides: exact binomial of how many put A or B higher. By t: paired t-test. By ranks: Wilcoxon's signed ranks, exact; it decides for ratings, the sides for preference. Corrected: Holm's method over all {report.Questions} questions. Of those who answered right some guessed."))
            .ToTable();
    }

    /// <summary>Ratings alone.</summary>
    /// <param name="comparisons">The comparisons, as they were corrected together.</param>
    public static Table Ratings(IEnumerable<RatingComparison> comparisons)
    {
        RatingComparison[] rows = [.. comparisons];
        return Ratings(new RatingReport(rows, [], rows.Max(row => row.Questions)));
    }

    /// <summary>The tasters' words by descriptor.</summary>
    /// <param name="tally">The tally.</param>
    public static Table Comments(CommentTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        return Table.Of(tally.Counts, Charts.Invariant($"Words in {tally.Comments} comments: tasters who used them"))
            .Text("descriptor", c => c.Descriptor.Name)
            .Number("of half A", c => c.A, decimals: 0)
            .Number("of half B", c => c.B, decimals: 0)
            .Number("of A only", c => c.OnlyA, decimals: 0)
            .Number("of B only", c => c.OnlyB, decimals: 0)
            .Number("denied", c => c.Denied, decimals: 0)
            .Number("p-value", c => c.PValue, decimals: 3)
            .Number("corrected", c => c.AdjustedPValue, decimals: 3)
            .Note(Charts.Invariant($"Denied: \"not bitter\" and the like, not counted. Corrected for all words by Holm's method. {tally.Uncaught.Count} comments hold no known word."))
            .ToTable();
    }

    private sealed record Asked(
        string Question, RatingGroup Group, int Tasters, double? MeanA, double? MeanB, double? Difference, Interval? Interval,
        PreferenceTest Sides, double? PairedT, double? Ranks, double Corrected);
}
