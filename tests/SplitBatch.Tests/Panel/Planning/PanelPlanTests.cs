using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

public class PanelPlanTests
{
    private static readonly PanelPlan Plan = new(Protocol.Triangle, 24) { Declared = new DateOnly(2026, 3, 1), Seed = 7 };

    private static readonly PanelPractice AsPlanned = new(Protocol.Triangle, 24, 24)
    {
        Alpha = 0.05, Seed = 7, Stopping = StoppingRule.Fixed, Served = new DateOnly(2026, 3, 2),
    };

    [Fact]
    public void A_plan_kept_has_no_departures() => Assert.Empty(Plan.Departures(AsPlanned));

    [Fact]
    public void A_plan_reads_as_a_sentence_with_the_counts_it_will_be_judged_by() => Assert.Equal(
        "main: triangle, 24 tasters, alpha 5 %, margin 30 % (beta 5 %); 13 right show a difference, 8 or fewer rule the margin out.",
        Plan.ToString());

    [Fact]
    public void Each_departure_is_named_with_what_it_means()
    {
        Assert.Equal("protocol", Single(AsPlanned with { Protocol = Protocol.DuoTrio }).What);
        Assert.Equal(Severity.Error, Single(AsPlanned with { Protocol = Protocol.DuoTrio }).Severity);
        Assert.Equal(("24", "19"), Points(Single(AsPlanned with { Tasters = 19, Sets = 19 })));
        Assert.Equal(("24", "30"), Points(Single(AsPlanned with { Tasters = 30, Sets = 30 })));
        Assert.Equal("sets", Single(AsPlanned with { Sets = 30 }).What);
        Assert.Equal(("5 %", "10 %"), Points(Single(AsPlanned with { Alpha = 0.10 })));
        Assert.Equal("margin", Single(AsPlanned with { Margin = 0.5 }).What);
        Assert.Equal("beta", Single(AsPlanned with { Beta = 0.2 }).What);
        Assert.Equal("seed", Single(AsPlanned with { Seed = 8 }).What);
        Assert.Equal("stopping", Single(AsPlanned with { Stopping = StoppingRule.Sequential }).What);
        Assert.Equal("looks", Single(AsPlanned with { EarlyLooks = 2 }).What);
        Assert.Equal("declared", Single(AsPlanned with { Served = new DateOnly(2026, 2, 27) }).What);
        Assert.Equal("declared", (Plan with { Declared = null }).Departures(AsPlanned).Single().What);

        static Departure Single(PanelPractice practice) => Assert.Single(Plan.Departures(practice));
        static (string, string) Points(Departure departure) => (departure.Planned, departure.Done);
    }

    [Fact]
    public void A_sequential_plan_has_its_lines_and_a_fixed_one_has_none()
    {
        var lines = (Plan with { Stopping = StoppingRule.Sequential, Margin = 0.5 }).Sequential();
        Assert.Equal((24, 0.5, 24), (lines.LastTaster, lines.Margin, lines.Lines.Count));
        Assert.Contains("declare stopping as sequential", Assert.Throws<InvalidOperationException>(() => Plan.Sequential()).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Nonsense_is_refused_when_the_plan_is_built_and_when_it_is_changed()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PanelPlan(Protocol.Triangle, 0));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Plan with { Alpha = 1.2 });
        Assert.StartsWith("Alpha is 1.2; it must be a share above 0 and below 1 (5 % is 0.05).", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Plan with { Margin = 30 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Plan with { Replicates = 0 });
        Assert.Throws<ArgumentException>(() => Plan with { Name = " " });
    }
}
