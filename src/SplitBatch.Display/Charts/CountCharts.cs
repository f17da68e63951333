using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of a count beside what guessing gives.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class CountCharts
{
    /// <summary>
    /// The chance of every count when all tasters guess, the counts that show a difference, and the count of this panel.
    /// </summary>
    /// <param name="test">The test of the count.</param>
    public static Figure Chart(this DifferenceTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var chances = Enumerable.Range(0, test.Tasters + 1)
            .Select(k => (Count: k, Chance: ExactBinomial.Exactly(k, test.Tasters, test.Protocol.Chance))).ToList();
        var shown =
            chances.Where(c => c.Chance >= 0.0005 || Math.Abs(c.Count - test.Count) <= 1 || c.Count == test.CriticalCount).ToList();
        shown = [.. chances.Where(c => c.Count >= shown[0].Count && c.Count <= shown[^1].Count)];
        var critical = test.CriticalCount ?? int.MaxValue;
        var right = test.Protocol.Sides == 1 ? "right" : "for the one beer";

        List<Mark> marks =
        [
            new Bars([.. shown.Where(c => c.Count < critical).Select(c => new BarItem(c.Count, c.Chance))]) { Ink = Ink.Faint },
            new Bars([.. shown.Where(c => c.Count >= critical).Select(c => new BarItem(c.Count, c.Chance))]) { Ink = Ink.Limit },
            new Rule(test.Count) { Name = Invariant($"this panel: {test.Count}") },
        ];
        if (critical <= shown[^1].Count)
            marks.Add(new Rule(critical - 0.5) { Ink = Ink.Limit, Name = Invariant($"{critical} or more show a difference") });

        return new Figure
        {
            Title = test.ByLeanings
                ? Invariant($"{test.Count} of {test.Tasters} {right}; with repeats the tasters decide, not the sets")
                : LowCountAlarm.Of(test.Protocol, test.Tasters, test.Correct).IsRaised
                ? Invariant($"{test.Count} of {test.Tasters} {right}: far fewer than guessing gives")
                : test.DifferenceShown
                ? Invariant($"{test.Count} of {test.Tasters} {right}: more than guessing gives")
                : Invariant($"{test.Count} of {test.Tasters} {right}: guessing alone gives as many often enough"),
            Subtitle = Invariant($"{Words.Capital(test.Protocol.Name)}, {Words.Counted(test.Tasters, "answer")}; bars: the chance of ")
                + Invariant($"each count when everybody guesses"),
            Reading = test.ByLeanings
                ? test.ToString()
                : (LowCountAlarm.Of(test.Protocol, test.Tasters, test.Correct) is { IsRaised: true } alarm
                    ? Invariant($"By guessing alone, {test.Count} or fewer of {test.Tasters} would come up in ")
                        + Invariant($"{Printed.Percent(alarm.PValue)} of panels. ")
                    : test.Protocol.Sides == 2
                    ? Invariant($"By guessing alone, {test.Count} or more of {test.Tasters} for one beer or the other would come up in ")
                        + Invariant($"{Printed.Percent(test.PValue)} of panels. ")
                    : Invariant($"By guessing alone, {test.Count} or more of {test.Tasters} would come up in ")
                        + Invariant($"{Printed.Percent(test.PValue)} of panels. "))
                + (test.CriticalCount is { } needed
                    ? Invariant($"{needed} are needed to show a difference at {Printed.ChosenPercent(test.Alpha)}.")
                    : "No count of so small a panel shows a difference."),
            X = new Axis("right answers") { Whole = true, Min = shown[0].Count - 0.7, Max = shown[^1].Count + 0.7 },
            Y = new Axis("chance by guessing") { Percent = true, Min = 0 },
            Marks = marks,
            Numbers = TableOf.Each(shown, "Chance of each count by guessing")
                .Number("right answers", c => c.Count, decimals: 0)
                .Percent("chance", c => c.Chance, decimals: 2)
                .Percent("chance of so many or more", c => ExactBinomial.AtLeast(c.Count, test.Tasters, test.Protocol.Chance), decimals: 2)
                .Text("shows a difference", c => c.Count >= critical ? "yes" : "no")
                .ToTable(),
        };
    }
}
