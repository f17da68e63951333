using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Planning;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of what a planned panel can show.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class PowerCharts
{
    /// <summary>The chance of showing a difference against the number of tasters, with this panel's place on the curve.</summary>
    /// <param name="plan">The plan of the panel; its margin is the share of discriminators asked about.</param>
    /// <param name="shares">Other shares of discriminators to draw, each above 0 and below 1; 20 % and 50 % if null.</param>
    /// <exception cref="InvalidOperationException">The protocol has no known chance.</exception>
    /// <example><code>trial.Panel("main").Plan.Chart()</code></example>
    public static Figure Chart(this PanelPlan plan, IReadOnlyList<double>? shares = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double[] drawn = [.. (shares ?? [0.2, 0.5]).Append(plan.Margin).Distinct().Order()];
        var needed = Power.TastersNeeded(plan.Protocol, plan.Alpha, plan.Power, plan.Margin);
        var most = (int)Math.Min(400, Math.Max(40, Math.Max(plan.Tasters * 1.6, Math.Min(needed.Always, 250) * 1.25)));
        var step = Math.Max(1, most / 120);
        var sizes = Enumerable.Range(1, most / step).Select(k => k * step).Where(n => n >= 4).ToList();
        var power = Power.Of(plan.Protocol, plan.Tasters, plan.Alpha, plan.Margin);

        List<Mark> marks =
        [
            new Rule(plan.Power, Along.Y) { Ink = Ink.Limit, Name = $"wanted: {Printed.ChosenPercent(plan.Power)}" },
            .. drawn.Select(share => new Curve([.. sizes.Select(n => new At(n, Power.Of(plan.Protocol, n, plan.Alpha, share)))])
            {
                Ink = share.Equals(plan.Margin) ? Ink.Main : Ink.Faint,
                Name = $"{Printed.ChosenPercent(share)} discriminators",
                ShortName = Printed.ChosenPercent(share),
            }),
            new Rule(plan.Tasters) { Name = $"this panel: {Words.Counted(plan.Tasters, "taster")}" },
            new Dots([new At(plan.Tasters, power)]),
        ];

        return new Figure
        {
            Title = Invariant($"{Words.Counted(plan.Tasters, "taster")} would show it in {Printed.Percent(power)} of trials if ")
                + Invariant($"{Share(plan)} can tell the beers apart"),
            Subtitle = Invariant($"{Words.Capital(plan.Protocol.Name)}, error {Printed.ChosenPercent(plan.Alpha)}; a curve for each ")
                + Invariant($"share of people who can tell; the teeth are there because counts are whole numbers"),
            Reading = Invariant($"The chance of showing a difference rises with the number of tasters. For {Share(plan)} discriminators ")
                + Invariant($"and a chance of {Printed.ChosenPercent(plan.Power)}, it takes {Words.Counted(needed.First, "taster")} ")
                + Invariant($"({needed.Always} or more always reach it); this panel has {plan.Tasters}."),
            X = new Axis("tasters") { Whole = true, Min = 0, Max = most },
            Y = new Axis("chance of showing a difference") { Percent = true, Min = 0, Max = 1 },
            Marks = marks,
            Numbers = PowerNumbers(plan, drawn,
                [.. sizes.Where(n => n % 4 == 0 || n == plan.Tasters || n == needed.First).Append(plan.Tasters).Distinct().Order()]),
        };
    }

    private static Table PowerNumbers(PanelPlan plan, IReadOnlyList<double> shares, IReadOnlyList<int> sizes)
    {
        var table = TableOf.Each(sizes, "Chance of showing a difference").Number("tasters", n => n, decimals: 0);
        foreach (var share in shares)
            table = table.Percent($"{Printed.ChosenPercent(share)} discriminators", n => Power.Of(plan.Protocol, n, plan.Alpha, share));
        return table.ToTable();
    }

    /// <summary>The margin with the digits of a choice, or of the share that a chosen d-prime makes.</summary>
    private static Printed Share(PanelPlan plan) =>
        plan.MarginAsDPrime is null ? Printed.ChosenPercent(plan.Margin) : Printed.Percent(plan.Margin);
}
