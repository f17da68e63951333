using SplitBatch.Display.Figures;
using SplitBatch.Panel;

namespace SplitBatch.Display;

/// <content>Whether order or position, rather than the beers, drove the answers.</content>
public static partial class Charts
{
    /// <summary>How often each serving order was answered right. The orders should differ no more than chance makes them.</summary>
    /// <param name="panel">The counted panel.</param>
    /// <exception cref="ArgumentException">No answer was counted.</exception>
    public static Figure OrderCheck(ScoredPanel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var rows = panel.Ballots.Where(b => b is { IsCounted: true, Set: not null })
            .GroupBy(b => b.Set!.Order.Text, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new Share($"served {g.Key}", g.Count(b => b.IsCorrect), g.Count()))
            .ToList();
        if (rows.Count == 0) throw new ArgumentException("No answer is counted yet, so there is nothing to check.", nameof(panel));
        var all = (double)rows.Sum(r => r.Count) / rows.Sum(r => r.Of);
        return ShareFigure(
            rows,
            title: rows.All(r => r.Interval.Contains(all)) ? "No serving order stands out" : $"Answers were unusually often or seldom right when {Listed([.. rows.Where(r => !r.Interval.Contains(all)).Select(r => r.Name)])}",
            subtitle: "Share of right answers by serving order, exact 95 % intervals; few sets of each order make them wide",
            axis: "right answers",
            expected: all,
            expectedName: $"all orders: {Percent(all)}");
    }

    /// <summary>How often the cup in each place was named. With balanced orders each place should be named equally often.</summary>
    /// <param name="panel">The counted panel; each answer names one cup.</param>
    /// <exception cref="ArgumentException">No counted answer names one cup.</exception>
    public static Figure PositionCheck(ScoredPanel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var named = panel.Ballots.Where(b => b is { IsCounted: true, Set: not null, Answer.Cups.Count: 1 }).Select(b => (b.Set, b.Answer!.Cups[0].Position)).ToList();
        if (named.Count == 0) throw new ArgumentException("No counted answer names one cup, so there is no place to check.", nameof(panel));
        var places = named.SelectMany(n => n.Set!.CodedCups.Select(c => c.Position)).Distinct().Order().ToList();
        var rows = places.Select(p => new Share(Invariant($"cup {p}"), named.Count(n => n.Position == p), named.Count)).ToList();
        var expected = 1.0 / places.Count;
        return ShareFigure(
            rows,
            title: rows.All(r => r.Interval.Contains(expected)) ? "No place in the row of cups was favoured" : $"{Capital(Listed([.. rows.Where(r => !r.Interval.Contains(expected)).Select(r => r.Name)]))} was named unusually often or seldom",
            subtitle: "How often the cup in each place was named, exact 95 % intervals",
            axis: "share of the answers",
            expected: expected,
            expectedName: $"if no place is favoured: {Percent(expected)}");
    }

    private sealed record Share(string Name, int Count, int Of)
    {
        public double Value => (double)Count / Of;

        public Interval Interval => ShareIntervals.ClopperPearson(Count, Of);
    }

    private static Figure ShareFigure(IReadOnlyList<Share> rows, string title, string subtitle, string axis, double expected, string expectedName) => new()
    {
        Title = title,
        Subtitle = subtitle,
        Reading = string.Join(" ", rows.Select(r => Invariant($"{Capital(r.Name)}: {r.Count} of {r.Of}."))),
        X = new Axis(axis) { Percent = true, Min = 0, Max = 1 },
        Y = Axis.Of([.. rows.Select(r => r.Name)]),
        Marks =
        [
            new Rule(expected) { Ink = Ink.Limit, Name = expectedName },
            new Ranges([.. rows.Select((r, i) => new RangeItem(i, r.Interval.Low, r.Interval.High, r.Value, Invariant($"{r.Count} of {r.Of}")))]),
        ],
        Numbers = Table.Of(rows, title)
            .Text("", r => r.Name)
            .Number("count", r => r.Count, decimals: 0)
            .Number("of", r => r.Of, decimals: 0)
            .Percent("share", r => r.Value)
            .Percent("from", r => r.Interval.Low)
            .Percent("to", r => r.Interval.High)
            .ToTable(),
    };
}
