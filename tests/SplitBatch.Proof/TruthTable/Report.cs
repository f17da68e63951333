using System.Text;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using static System.FormattableString;

namespace SplitBatch.Proof.TruthTable;

/// <summary>The truth table as a page of Markdown.</summary>
public static class Report
{
    public static string Of(IReadOnlyList<PanelTally> panels, BrewTally brews, IReadOnlyList<WholeTrial> whole, int seed, string command)
    {
        var text = new StringBuilder();
        int trials = panels[0].Trials;
        text.AppendLine(Invariant($"""
            # Truth table

            Whole trials, simulated where the truth is known: how often each verdict is given, how often a claim is false, and how often an interval holds the truth. {trials:N0} panels in each cell and {brews.Trials:N0} split batches, seed {seed}. Made by

            ```bash
            {command}
            ```

            Each panel goes through the calls of a notebook: a serving plan is drawn ({PanelTable.Plans} for each cell, used in turn), simulated tasters write codes on ballots, the ballots are scored against the key, and the verdict is read. Every plan declares alpha 5 %, a margin of {100 * Truth.Margin:0} % of tasters who can tell, and beta 5 %. The truths are that nobody can tell, that 10 % can, that the {100 * Truth.Margin:0} % of the margin can, and that 50 % can; with single sets all tasters are alike and as able as that share demands, with repeats that share can always tell and the others never.

            A claim is false when a difference is shown and there is none, or when the margin is ruled out and it is true. "Plain" counts trials in which the verdict names nothing about the panel that limits it. A rate is called broken when it is further above its promise than chance gives in one cell of a hundred thousand ({100.0 * Promise.Largest(0.05, trials) / trials:0.0} % for a promise of 5 %).

            """));
        Section(text, "Honest practice",
            "The promises: false claims at most 5 %; the limit still allowed, and the exact intervals of the share of discriminators and "
                + "of d-prime, hold the truth at least 95 times in 100. The likelihood interval of d-prime promises so only about.",
                panels.Where(p => p.Cell.Practice.IsHonest()));
        Section(text, "Sloppy practice",
            "Nothing is promised here: this is what the habits cost, and whether the verdict says so. Plain and false is what a reader "
                + "would be misled by.", panels.Where(p => !p.Cell.Practice.IsHonest()));
        text.AppendLine("## Doses and lab").AppendLine().AppendLine("| promise, 95 in 100 | kept |").AppendLine("| --- | ---: |");
        foreach (string promise in BrewTally.Promises)
            text.AppendLine(Invariant($"| {promise} | {Percent(1 - ((double)brews.Bad(promise) / brews.Trials))} |"));
        Whole(text, whole);
        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void Section(StringBuilder text, string title, string opening, IEnumerable<PanelTally> panels)
    {
        text.AppendLine($"## {title}").AppendLine().AppendLine(opening).AppendLine();
        foreach (var group in panels.GroupBy(p => (p.Cell.Practice, p.Cell.Protocol.Name)))
        {
            text.AppendLine($"### {group.Key.Name}, {group.Key.Practice.InWords()}").AppendLine()
                .AppendLine("| sets | truth | difference | difference, within margin | margin ruled out | nothing settled | false | plain "
                    + "and false | limit holds | interval holds | d-prime interval holds | its likelihood interval holds | sets used |")
                .AppendLine("| ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
            foreach (var p in group)
            {
                text.AppendLine(Invariant(
                    $"| {p.Cell.Sets} | {p.Cell.Truth} | {Percent(p.Share(PanelAnswer.DifferenceShown))} | ")
                        + Invariant($"{Percent(p.Share(PanelAnswer.DifferenceWithinMargin))} | ")
                        + Invariant($"{Percent(p.Share(PanelAnswer.MarginRuledOut))} | {Percent(p.Share(PanelAnswer.Inconclusive))} | ")
                        + Invariant($"{Percent(p.FalseShare)} | {Percent(p.FalseAndPlainShare)} | {Percent(p.LimitCovers)} | ")
                        + Invariant($"{Percent(p.SharesCover)} | {Percent(p.DistanceCovers)} | {Percent(p.LikelyCovers)} | ")
                        + Invariant($"{p.MeanSets:0.0} |"));
            }

            text.AppendLine();
        }
    }

    private static void Whole(StringBuilder text, IReadOnlyList<WholeTrial> whole)
    {
        text.AppendLine().AppendLine("## From the scale to the verdict").AppendLine().AppendLine(Invariant(
            $"""
            {whole[0].Trials:N0} whole trials in each row: two doses weighed, brewed, measured in duplicate, and tasted as triangles by {WholeCell.Tasters} people, who notice hops and bitterness ({WholeCell.BitternessOfOneDPrime:0} IBU make a d-prime of one here, a figure made up for this table; hops that differ make {WholeCell.All[1].Hops:0.0}). An old assay promises more than the lot holds: {100 * WholeCell.All[2].TrueAlphaShare:0} % of it is there. A reader is misled when a difference is shown, bitterness alone makes it, and the verdict does not say that it may be; promised is at most 5 %.

            | truth | the lab finds a difference | a difference in taste is shown | shown, and bitterness named as a possible cause | readers misled |
            | --- | ---: | ---: | ---: | ---: |
            """));
        foreach (var row in whole)
        {
            double Share(int count) => (double)count / row.Trials;
            text.AppendLine(Invariant($"| {row.Cell.Name} | {Percent(Share(row.LabDiffers))} | {Percent(Share(row.Shown))} | ")
                + Invariant($"{Percent(Share(row.ShownAndBitternessNamed))} | ")
                + Invariant($"{(row.Cell.Hops == 0 ? Percent(Share(row.Misled)) : "")} |"));
        }
    }

    private static string Percent(double share) => double.IsNaN(share) ? "" : Invariant($"{100 * share:0.0} %");
}
