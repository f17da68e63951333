using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Trials;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>A panel while its ballots come in.</summary>
public static class TallyCharts
{
    /// <summary>Who has answered, seat by seat, and not how.</summary>
    /// <param name="tally">The tally.</param>
    public static Figure Chart(this LiveTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        var seats = tally.Tasters.Select((taster, i) => (Seat: i + 1, taster.Taster, taster.Sets, taster.Answered)).ToList();
        var most = Math.Max(1, seats.Max(seat => seat.Sets));
        return new Figure
        {
            Title = tally.IsComplete
                ? Invariant($"All {tally.Served} ballots are in")
                : Invariant($"{tally.Answered} of {tally.Served} ballots are in; {Words.Counted(tally.StillOut, "ballot")} still out"),
            Subtitle = Invariant($"{Words.Capital(tally.Panel.Plan.Protocol.Name)}, panel {tally.Panel.Name}; who has answered, ")
                + Invariant($"seat by seat"),
            Reading = tally.ToString(),
            X = new Axis("seat") { Whole = true, Min = 0.3, Max = seats.Count + 0.7 },
            Y = new Axis("sets") { Whole = true, Min = 0, Max = most + 0.3 },
            Marks =
            [
                new Bars([.. seats.Select(seat => new BarItem(seat.Seat, seat.Sets))]) { Ink = Ink.Faint, Name = "served" },
                new Bars([.. seats.Where(seat => seat.Answered > 0).Select(seat => new BarItem(seat.Seat, seat.Answered))])
                {
                    Name = "answered",
                },
            ],
            Numbers = TableOf.Each(seats, "Who has answered")
                .Number("seat", seat => seat.Seat, decimals: 0)
                .Text("taster", seat => seat.Taster)
                .Number("sets served", seat => seat.Sets, decimals: 0)
                .Number("ballots in", seat => seat.Answered, decimals: 0)
                .ToTable(),
        };
    }
}
