using System.ComponentModel;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;
using SplitBatch.Trials.Reading;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>The chart of what one panel counted, whatever its protocol.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class PanelCharts
{
    /// <summary>The chart of a panel's count: against guessing, along the sequential lines, or of both kinds of set.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public static Figure Chart(this PanelRecord panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return panel.Sequential is { } path ? path.Chart() : panel.YesNo is { } test ? test.Chart() : panel.Reading.Difference.Chart();
    }

    /// <summary>How often a difference was reported where there was one, and where there was none.</summary>
    /// <param name="test">The test of A/not-A or same/different.</param>
    public static Figure Chart(this YesNoTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var (unlike, alike, word) = ReferenceEquals(test.Protocol, Protocol.ANotA)
            ? ("cups of half B", "cups of half A", "not A")
            : ("pairs of unlike beers", "pairs of one beer", "different");
        (string Name, int Said, int Sets)[] rows = [(unlike, test.Hits, test.Different), (alike, test.FalseAlarms, test.Alike)];
        Interval[] intervals = [.. rows.Select(r => ShareIntervals.ClopperPearson(r.Said, r.Sets))];
        return new Figure
        {
            Title = test.DifferenceShown ? $"\"{Words.Capital(word)}\" is said more often where it is true"
                : $"\"{Words.Capital(word)}\" is not shown to be said more often where it is true",
            Subtitle = $"{Words.Capital(test.Protocol.Name)}: share of sets called {word}, with exact 95 % intervals",
            Reading = test.ToString(),
            X = new Axis($"called {word}") { Percent = true, Min = 0, Max = 1 },
            Y = Axis.Of([.. rows.Select(r => r.Name)]),
            Marks =
            [
                new Ranges(
                    [.. rows.Select(
                        (r, i) => new RangeItem(i, intervals[i].Low, intervals[i].High, (double)r.Said / r.Sets,
                            Invariant($"{r.Said} of {r.Sets}")))]),
            ],
            Numbers = TableOf.Each(rows, $"Sets called {word}").Text("kind of set", r => r.Name)
                .Number($"called {word}", r => r.Said, decimals: 0).Number("of", r => r.Sets, decimals: 0).ToTable(),
        };
    }
}
