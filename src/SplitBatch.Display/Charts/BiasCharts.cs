using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>Charts of whether order and position drove the answers.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class BiasCharts
{
    private static readonly string[] OrderAndPositionChecks = ["serving order", "position of the odd cup",
        "position of the first cup of A", "position"];

    /// <summary>Whether the panel allows a check of order or position at all.</summary>
    internal static bool HasChart(this BiasReport report) => report.Checks.Any(check => OrderAndPositionChecks.Contains(check.Name));

    /// <summary>Right answers by serving order and by place, beside what would be expected if neither mattered.</summary>
    /// <param name="report">The bias checks of a panel.</param>
    /// <exception cref="ArgumentException">The panel allows no check of order or position.</exception>
    public static Figure Chart(this BiasReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var checks = report.Checks.Where(c => OrderAndPositionChecks.Contains(c.Name)).ToList();
        return checks.Count > 0
            ? Bias(checks, "Order and position")
            : throw new ArgumentException(
                "The panel allows no check of order or position: all sets were served alike, or none is counted.", nameof(report));
    }

    /// <summary>Right answers (or wrong picks) by one grouping, beside what would be expected if it did not matter.</summary>
    /// <param name="check">The check.</param>
    public static Figure Chart(this BiasCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return Bias([check], Words.Capital(check.Name));
    }

    private static Figure Bias(IReadOnlyList<BiasCheck> checks, string subject)
    {
        var rows = checks.SelectMany(check => check.Groups.Where(g => g.Sets > 0).Select(group => (Check: check, Group: group,
            Interval: ShareIntervals.ClopperPearson(group.Count, group.Sets)))).ToList();
        var shown = checks.Where(c => c.BiasShown).ToList();
        return new Figure
        {
            Title = shown.Count == 0
                ? $"{subject}: no bias is shown, which does not rule one out"
                : $"{subject}: the answers depended on {Words.Listed([.. shown.Select(c => c.Name)])}",
            Subtitle = "Share in each group with exact 95 % intervals; upright marks: expected if the grouping did not matter",
            Reading = string.Join(" ", checks.Select(c => $"{Words.Capital(c.ToString())}.")),
            X = new Axis(checks.All(c => c.Kind == BiasKind.RightAnswers) ? "right answers" : "right answers, or wrong picks of a place")
            {
                Percent = true,
                Min = 0,
                Max = 1,
            },
            Y = Axis.Of([.. rows.Select(r => GroupName(r.Check, r.Group))]),
            Marks =
            [
                new Ranges(
                    [.. rows.Select(
                        (r, i) => new RangeItem(i, r.Interval.Low, r.Interval.High, (double)r.Group.Count / r.Group.Sets,
                            Invariant($"{r.Group.Count} of {r.Group.Sets}")))]),
                new Ranges([.. rows.Select((r, i) => new RangeItem(i, r.Group.Expected / r.Group.Sets, r.Group.Expected / r.Group.Sets))])
                {
                    Ink = Ink.Limit,
                },
            ],
            Numbers = checks.Table(),
        };
    }

    private static string GroupName(BiasCheck check, BiasGroup group) => (check.Name, check.Kind) switch
    {
        ("serving order", _) => $"served {group.Label}",
        ("position of the odd cup", _) => $"odd cup {group.Label}",
        (_, BiasKind.WrongPicks) => $"wrongly picked: {group.Label}",
        _ => $"{check.Name}: {group.Label}",
    };
}
