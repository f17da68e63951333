using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>What a handful of returns can and cannot tell, in words.</summary>
internal static class CalibrationStatement
{
    internal static string Of(HouseCalibration house)
    {
        var n = house.Batches;
        if (n == 0) return "No returns yet. Estimates stand as published, and formulas differ among themselves by a third or more.";
        var next = house.Correct(100).Interval;
        var sentences = new List<string>
        {
            string.Create(CultureInfo.InvariantCulture,
                $"{n} {(n == 1 ? "batch" : "batches")}: measured bitterness was {Printed.Ratio(house.RawFactor!.Value)} times the "
                    + $"estimate on average; "
                    + $"{(house.OwnWeight < 0.95 ? $"with so few, {Printed.Ratio(house.Factor)} is used"
                        : $"{Printed.Ratio(house.Factor)} is used")}."),
            string.Create(CultureInfo.InvariantCulture,
                $"A next batch estimated at 30 IBU would be measured between {Printed.Fixed(next.Low * 0.3, 0)} and "
                    + $"{Printed.Fixed(next.High * 0.3, 0)} IBU, {Printed.Chosen(house.Level * 100)} times in 100."),
        };
        if (house.LeaveOneOutError is { } error && house.UncorrectedError is { } plain)
        {
            sentences.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"Each batch predicted from the others was off by about {Percent(error)}, against {Percent(plain)} for the published "
                    + $"estimate{(error < plain ? "" : ": so far the correction does not help")}."));
        }

        sentences.Add(house.FactorInterval.Contains(1)
            ? "These returns do not rule out that the published estimate is right on average."
            : $"These returns show that the published estimate is too {(house.Factor < 1 ? "high" : "low")} on average here.");
        sentences.Add(n switch
        {
            1 => "One batch cannot tell the house's habit from that batch's luck.",
            < 5 => "So few batches cannot tell whether the factor changes with hop form, gravity or hop rate; it is not to be used for "
                + "beers unlike these.",
            _ => "The factor holds for beers like these; a new hop form, strength or kettle needs its own returns.",
        });
        return string.Join(" ", sentences);
    }

    private static string Percent(double logarithm) => Printed.Percent(Math.Exp(logarithm) - 1);
}
