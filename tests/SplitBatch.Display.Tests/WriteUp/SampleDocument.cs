using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>A small write-up with one of each block; every text can be replaced by a hostile one.</summary>
internal static class SampleDocument
{
    public static Claim Right { get; } = new("panel.right", $"{Printed.Count(11)} of {Printed.Count(24)} answers were right.",
        "Exact binomial test, triangle, one-sided", "ballots-main.csv, 24 rows");

    public static Claim Allowed { get; } = new("panel.allowed", $"Up to {Printed.Percent(0.453)} of people may tell the beers apart.",
        "Exact upper limit at 95 %", "ballots-main.csv, 24 rows");

    public static Document Create(string? hostile = null) => new(
        hostile ?? "Cones or pellets in one amber ale",
        new Heading(hostile ?? "The question"),
        hostile ?? "Do whole cones give a different beer than pellets of the same bitterness?",
        new Prose(hostile ?? "I *always* thought so.\n\n- one point\n- another **point**\n\n> A quotation.\n\nSee [the "
            + "page](https://example.org/hops?a=1&b=2)."),
        new Callout(hostile ?? "Verdict: the panel cannot decide", hostile ?? "Neither a difference nor its absence is shown.")
        {
            Claims = [Allowed],
        },
        new Heading(hostile ?? "The panel"),
        new Heading(hostile ?? "What was counted", 3),
        new Claims(Right, Allowed),
        Samples.Bars() with { Title = hostile ?? Samples.Bars().Title, Reading = hostile ?? Samples.Bars().Reading },
        new Table(hostile ?? "The charges", [new(hostile ?? "lot"), new("amount", "g", 1)],
            [[hostile ?? "cones", 61.2], ["pellets", null]]) { Note = hostile ?? "Rounded to the scale." },
        new Bullets(hostile ?? "One batch, one crop.", "One panel."),
        new Heading(hostile ?? "Where every number comes from"),
        new Ledger())
    {
        Subtitle = hostile ?? "The data are invented.",
        Summary = new SummaryPicture(
            hostile ?? "Do whole cones give a different beer than pellets of the same bitterness?",
            [
                new SummaryStep("Doses", hostile ?? "61 g cones, 28 g pellets: 32 IBU each by estimate."),
                new SummaryStep("Lab", hostile ?? "30.1 and 31.4 BU: not told apart by the method.", Samples.Intervals()),
                new SummaryStep("Panel", hostile ?? "11 of 24 right; 13 would show a difference.", Samples.Bars()),
            ],
            hostile ?? "Inconclusive: up to 45 % of people may still tell them apart. 60 tasters would settle it.")
            {
                SmallPrint = "The data are invented.",
            },
    };
}
