using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Planning;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>Charts of a sequential plan and of the course of a panel by it.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class SequentialCharts
{
    /// <summary>The course of a sequential panel between the two lines at which it stops.</summary>
    /// <param name="path">The course.</param>
    public static Figure Chart(this WaldPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var last = (int)Math.Min(path.Plan.LastTaster, Math.Max(20, Math.Ceiling(path.Tasters * 1.25)));
        return Chart(path.Plan, last, path);
    }

    /// <summary>The two lines at which a sequential panel stops, before anything is poured.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="tasters">How many tasters to draw, at least 2.</param>
    public static Figure Chart(this WaldPlan plan, int tasters = 60)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 2);
        return Chart(plan, Math.Min(tasters, plan.LastTaster), null);
    }

    private static Figure Chart(this WaldPlan plan, int last, WaldPath? path)
    {
        double Upper(double n) => plan.Slope * n + plan.DifferentIntercept;
        double Lower(double n) => plan.Slope * n + plan.SimilarIntercept;
        List<Mark> marks =
        [
            new Ribbon([(0, Math.Max(0, Lower(0)), Upper(0)),
                (Math.Min(last, -plan.SimilarIntercept / plan.Slope), 0, Upper(Math.Min(last, -plan.SimilarIntercept / plan.Slope))),
                (last, Math.Max(0, Lower(last)), Upper(last))]),
            new Curve([new At(0, Upper(0)), new At(last, Upper(last))]) { Ink = Ink.Limit, Name = "difference shown" },
            new Curve([new At(Math.Min(last, -plan.SimilarIntercept / plan.Slope), 0), new At(last, Math.Max(0, Lower(last)))])
            {
                Ink = Ink.Limit,
                Name = $"{Printed.ChosenPercent(plan.Margin)} ruled out",
            },
        ];
        if (path is { Steps.Count: > 0 })
        {
            marks.Add(new Curve([new At(0, 0), .. path.Steps.Select(s => new At(s.Tasters, s.Correct))]));
            marks.Add(new Dots([new At(path.Tasters, path.Correct)]) { Name = Invariant($"{path.Correct} of {path.Tasters}") });
        }

        var rows = path is { Steps.Count: > 0 }
            ? path.Steps
            : [.. Enumerable.Range(1, last).Select(n => new WaldStep(n, 0, plan.SimilarAt(n), plan.DifferentAt(n)))];
        var table = TableOf.Each(rows, "Count and lines, taster by taster").Number("answers", s => s.Tasters, decimals: 0);
        if (path is not null) table = table.Number("right", s => s.Correct, decimals: 0);
        return new Figure
        {
            Title = path?.Decision switch
            {
                null => "Where this sequential panel stops",
                SequentialDecision.Different =>
                    Invariant($"After {Words.Counted(path.Tasters, "taster")} a difference is shown, and the panel stops"),
                SequentialDecision.Similar => Invariant($"After {Words.Counted(path.Tasters, "taster")} ")
                    + Invariant($"{Printed.ChosenPercent(plan.Margin)} discriminators are ruled out, and the panel stops"),
                SequentialDecision.Undecided =>
                    Invariant($"After the last of {Words.Counted(path.Tasters, "taster")} the panel is undecided"),
                _ => Invariant($"After {Words.Counted(path.Tasters, "taster")} the panel goes on"),
            },
            Subtitle = $"{Words.Capital(plan.Protocol.Name)} with Wald's lines, nominal errors {Printed.ChosenPercent(plan.Alpha)} and "
                + $"{Printed.ChosenPercent(plan.Beta)}; between the lines the next taster is served",
            Reading = path?.ToString() ?? plan.ToString(),
            X = new Axis("answers") { Whole = true, Min = 0, Max = last },
            Y = new Axis("right answers") { Whole = true, Min = 0 },
            Marks = marks,
            Numbers = table
                .Number("at or below: ruled out", s => s.SimilarAt >= 0 ? s.SimilarAt : null, decimals: 0)
                .Number("at or above: shown", s => s.DifferentAt, decimals: 0)
                .ToTable(),
        };
    }
}
