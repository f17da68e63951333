using SplitBatch.Display.Figures;
using SplitBatch.Evidence;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Display.WriteUp;

/// <summary>The part of a write-up about the panels: plan, count, what was asked beside, and the panels side by side.</summary>
internal static class PanelChapter
{
    public static IEnumerable<Block> Of(Trial trial, Verdict verdict)
    {
        if (trial.Panels.Count == 0) yield break;
        var counted = trial.Panels.Where(panel => panel.HasCount).ToList();
        yield return new Heading(trial.Panels.Count == 1 ? "The panel" : "The panels");
        foreach (var (panel, finding) in counted.Zip(verdict.Evidence.Panels))
        {
            if (counted.Count > 1) yield return new Heading($"Panel {panel.Name}", 3);
            foreach (var block in OfPanel(panel, finding, verdict)) yield return block;
        }

        if (counted.Where(panel => panel.Plan.Protocol.HasKnownChance && panel.Sequential is null).ToList() is { Count: > 0 } read)
        {
            if (read.Count > 1) yield return new Heading("The panels side by side", 3);
            var together = verdict.Claims.Where(claim => claim.Id == "panels.together").ToList();
            if (together.Count > 0) yield return new Claims(together);
            if (read.Count > 1) yield return Charts.Forest(trial.Forest(), verdict.Evidence.Together);
            yield return Charts.Discriminators(read.Select(panel => (panel.Name, panel.Reading.Difference)), read[0].Plan.Margin);
            yield return Tables.Panels(read.Select(panel => (panel.Name, panel.Reading)));
        }

        if (trial.Note("results") is { } own) yield return new Prose(own);
        yield return new Heading("The plan, and what it could have told", 3);
        yield return Tables.Plans(trial.Panels.Select(panel => panel.Plan));
        yield return Tables.PlanKept(trial);
        var curves = trial.Panels.Select(panel => panel.Plan).Where(plan => plan is { Protocol.HasKnownChance: true, Stopping: StoppingRule.Fixed })
            .DistinctBy(plan => (plan.Protocol.Chance, plan.Protocol.Sides, plan.Tasters, plan.Alpha, plan.Power, plan.Margin)); // Panels that could have told the same share one curve.
        foreach (var plan in curves) yield return Charts.PowerCurve(plan);
        foreach (var report in verdict.Evidence.Panels.Select(finding => finding.Bias).OfType<BiasReport>().Where(Charts.HasOrderAndPosition))
        {
            yield return Charts.OrderAndPosition(report) with
            {
                Reading = "Right answers by serving order and by position, and wrong picks by position. An upright mark shows what to expect if order and position did not matter; the counts and their tests stand in a table under \"Data and method\".",
            };
        }
    }

    /// <summary>The chart of a panel's count; null where the protocol has none.</summary>
    public static Figure? CountChart(PanelFinding finding) =>
        finding.Sequential is { } path ? Charts.Sequential(path)
        : finding.YesNo is { } test ? Charts.YesNo(test)
        : finding.Reading is { } reading ? Charts.CountAgainstGuessing(reading.Difference)
        : null;

    private static IEnumerable<Block> OfPanel(PanelRecord panel, PanelFinding finding, Verdict verdict)
    {
        yield return new Claims(verdict.Claims.Where(claim => claim.Id.StartsWith($"panel.{panel.Name}.", StringComparison.Ordinal)));
        if (CountChart(finding) is { } chart) yield return chart;
        if (finding.Sequential is { } path) yield return Tables.Sequential(path.Plan);
        if (finding.Repeats is { Spread.Count: > 0 } repeats) yield return Tables.Spread(repeats);
        if (finding.Ratings is { } ratings) yield return Tables.Ratings(ratings);
        if (finding.Comments is { Counts.Count: > 0 } words) yield return Tables.Comments(words);
        if (panel.Departures.Count > 0) yield return Tables.Departures(panel);
    }
}
