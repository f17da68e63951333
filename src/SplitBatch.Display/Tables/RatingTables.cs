using System.ComponentModel;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of ratings and comments.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class RatingTables
{
    /// <summary>Ratings and preferences among all tasters and among those who answered right, corrected together.</summary>
    /// <param name="report">The report.</param>
    public static Table Table(this RatingReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Ratings([("", report)]);
    }

    /// <summary>Ratings and preferences of every counted panel of a trial; those of one panel are corrected together.</summary>
    /// <param name="trial">The trial.</param>
    /// <exception cref="TrialIncompleteException">No panel is counted yet.</exception>
    public static Table TableOfRatings(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return Ratings([.. trial.CountedPanels.Where(panel => panel.Ratings is not null).Select(panel => (panel.Name, panel.Ratings!))]);
    }

    private static Table Ratings(IReadOnlyList<(string Panel, RatingReport Report)> reports)
    {
        var rows = reports.SelectMany(r => r.Report.Ratings.Select(c => new Asked(
                r.Panel, c.Attribute, c.Group, c.Tasters, c.MeanA, c.MeanB, c.Difference, c.DifferenceInterval, c.Higher, c.TPValue,
                c.Ranks.PValue, c.AdjustedPValue))
            .Concat(r.Report.Preferences.Select(p => new Asked(
                r.Panel, "preferred", p.Group, p.Test.ForA + p.Test.ForB + p.Test.None, null, null, null, null, p.Test, null, null,
                p.AdjustedPValue)))).ToList();
        var caption = "What tasters were asked beside the difference"
            + (reports is [{ Panel.Length: > 0 }] ? $", panel {reports[0].Panel}" : "");
        var table = TableOf.Each(rows, caption);
        if (reports.Count > 1) table = table.Text("panel", r => r.Panel);
        return table
            .Text("question", r => r.Question)
            .Text("tasters", r => Invariant($"{(r.Group == RatingGroup.All ? "all" : "right")} {r.Tasters}"))
            .Number("A", r => r.MeanA)
            .Number("B", r => r.MeanB)
            .Text("B minus A",
                r => r.Interval is { } interval
                    ? $"{Printed.Fixed(r.Difference!.Value, 1)} ({Printed.Fixed(interval.Low, 1)} to {Printed.Fixed(interval.High, 1)})"
                    : null)
            .Text("A : B", r => Invariant($"{r.Sides.ForA} : {r.Sides.ForB}"))
            .Number("p by sides", r => r.Sides.PValue, decimals: 3)
            .Number("p by t", r => r.PairedT, decimals: 3)
            .Number("p by ranks", r => r.Ranks, decimals: 3)
            .Number("corrected", r => r.Corrected, decimals: 3)
            .Note(rows.Count == 0
                ? "No panel was asked for ratings or a preference; ratings-main.csv with one row for each cup, and the column preferred "
                    + "of the ballots, would hold them."
                : Invariant($"Tasters: all, or those who answered right, of whom some guessed. B minus A: with its 95 % interval. A : B: ")
                    + Invariant($"how many put A or B higher. By sides: exact binomial of that. By t: paired t-test. By ranks: ")
                    + Invariant($"Wilcoxon's signed ranks, exact. The ranks decide for ratings, the sides for preference. Corrected: by ")
                    + Invariant($"Holm's method for the {reports.Max(r => r.Report.Questions)} questions asked together."))
            .ToTable();
    }

    /// <summary>Ratings alone.</summary>
    /// <param name="comparisons">The comparisons, as they were corrected together.</param>
    public static Table Table(this IEnumerable<RatingComparison> comparisons)
    {
        RatingComparison[] rows = [.. comparisons];
        return Table(new RatingReport(rows, [], rows.Max(row => row.Questions)));
    }

    /// <summary>The tasters' words by descriptor.</summary>
    /// <param name="tally">The tally.</param>
    public static Table Table(this CommentTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        return Comments([("", tally)]);
    }

    /// <summary>The words of every counted panel of a trial, by descriptor.</summary>
    /// <param name="trial">The trial.</param>
    /// <exception cref="TrialIncompleteException">No panel is counted yet.</exception>
    public static Table TableOfComments(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return Comments(
            [.. trial.CountedPanels.Where(panel => panel.Comments is not null).Select(panel => (panel.Name, panel.Comments!))]);
    }

    private static Table Comments(IReadOnlyList<(string Panel, CommentTally Tally)> tallies)
    {
        var rows = tallies.SelectMany(t => t.Tally.Counts.Select(count => (t.Panel, Count: count))).ToList();
        var table = TableOf.Each(rows,
            Invariant($"Words in {Words.Counted(tallies.Sum(t => t.Tally.Comments), "comment")}")
                + Invariant($"{(tallies is [{ Panel.Length: > 0 }] ? $" of panel {tallies[0].Panel}" : "")}: how many tasters used them"));
        if (tallies.Count > 1) table = table.Text("panel", r => r.Panel);
        return table
            .Text("descriptor", r => r.Count.Descriptor.Name)
            .Number("of half A", r => r.Count.A, decimals: 0)
            .Number("of half B", r => r.Count.B, decimals: 0)
            .Number("of A only", r => r.Count.OnlyA, decimals: 0)
            .Number("of B only", r => r.Count.OnlyB, decimals: 0)
            .Number("denied", r => r.Count.Denied, decimals: 0)
            .Number("p-value", r => r.Count.PValue, decimals: 3)
            .Number("corrected", r => r.Count.AdjustedPValue, decimals: 3)
            .Note(tallies.Count == 0
                ? "No comments on single cups were written; comments-main.csv with taster, code and comment would hold them."
                : Invariant($"Denied: \"not bitter\" and the like, not counted. Corrected by Holm's method for all words. Comments with ")
                    + Invariant($"no known word: {tallies.Sum(t => t.Tally.Uncaught.Count)}."))
            .ToTable();
    }

    private sealed record Asked(
        string Panel, string Question, RatingGroup Group, int Tasters, double? MeanA, double? MeanB, double? Difference,
        Interval? Interval,
        PreferenceTest Sides, double? PairedT, double? Ranks, double Corrected);
}
