using SplitBatch.Display.Charts;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence.Findings;
using SplitBatch.Evidence;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials;

namespace SplitBatch.Display.WriteUp;

/// <summary>The part of a write-up about the panels: plan, count, what was asked beside, and the panels side by side.</summary>
internal static class PanelChapter
{
    public static IEnumerable<Block> Of(Trial trial, Verdict verdict)
    {
        if (trial.Panels.Count == 0) yield break;
        var counted = trial.Panels.Where(panel => panel.HasCount).ToList();
        yield return new Heading(trial.Panels.Count == 1 ? "The panel" : "The panels");
        foreach (var panel in verdict.Evidence.Panels)
        {
            if (counted.Count > 1) yield return new Heading($"Panel {panel.Plan.Name}", 3);
            foreach (var block in OfPanel(trial.Panel(panel.Plan.Name), panel, verdict)) yield return block;
        }

        if (verdict.Evidence.Panels.Where(HasShare).ToList() is { Count: > 0 } read)
        {
            if (read.Count > 1) yield return new Heading("The panels side by side", 3);
            if (verdict.About(Subject.Panels) is { Count: > 0 } together) yield return new Claims(together);
            if (read.Count > 1)
            {
                yield return Forest.Of(read.Select(panel => trial.Panel(panel.Plan.Name).AsPanelCount())).Chart(verdict.Evidence.Together)
                    .ReadAs([.. Said<SetsCounted>(read, verdict), .. verdict.About(Subject.Panels)]);
            }

            yield return read.Select(panel => (panel.Plan.Name, panel.Reading!)).Chart().ReadAs(Said<MarginTested>(read, verdict));
            yield return read.Select(panel => (panel.Plan.Name, panel.Reading!)).Table();
        }

        if (trial.Note("results") is { } own) yield return new Prose(own);
        yield return new Heading("The plan, and what it could have told", 3);
        yield return trial.Panels.Select(panel => panel.Plan).Table();
        yield return trial.PlanKept();
        var curves = trial.Panels.Select(panel => panel.Plan)
            .Where(plan => plan is { Protocol.HasKnownChance: true, Stopping: StoppingRule.Fixed })
            // Panels that could have told the same share one curve.
            .DistinctBy(plan => (plan.Protocol.Chance, plan.Protocol.Sides, plan.Tasters, plan.Alpha, plan.Power, plan.Margin));
        foreach (var plan in curves) yield return plan.Chart();
        foreach (var report in verdict.Evidence.Panels.Select(finding => finding.Bias).OfType<BiasReport>().Where(BiasCharts.HasChart))
        {
            yield return report.Chart() with
            {
                Reading = "Right answers by serving order and by position, and wrong picks by position. An upright mark shows what to "
                    + "expect if order and position did not matter; the counts and their tests stand in a table under \"Data and "
                    + "method\".",
            };
        }
    }

    /// <summary>The chart of a panel's count; null where the protocol has none.</summary>
    public static Figure? CountChart(CountedPanel finding) =>
        finding.Sequential is { } path ? path.Chart()
        : finding.YesNo is { } test ? test.Chart()
        : finding.Reading is { } reading ? reading.Difference.Chart()
        : null;

    /// <summary>
    /// Whether a share of tasters who can tell may be stated: not of a panel that asks for something else, stops early, or raised the
    /// alarm.
    /// </summary>
    private static bool HasShare(CountedPanel panel) =>
        panel is { Reading: not null, Sequential: null, Plan.AsksPreference: false, Answer: not PanelAnswer.Alarm };

    private static IEnumerable<Claim> Said<T>(IEnumerable<CountedPanel> panels, Verdict verdict)
        where T : Finding => panels.Select(panel => verdict.Findings.First<T>(Subject.Panel(panel.Plan.Name))).OfType<Finding>()
            .Select(Claim.Of);

    private static IEnumerable<Block> OfPanel(PanelRecord panel, CountedPanel finding, Verdict verdict)
    {
        yield return new Claims(verdict.About(Subject.Panel(panel.Name)));
        if (CountChart(finding) is { } chart) yield return chart.ReadAs(verdict.About(Subject.Panel(panel.Name)).Take(2));
        if (finding.Sequential is { } path) yield return path.Plan.Table();
        if (finding.Repeats is { Spread.Count: > 0 } repeats) yield return repeats.Table();
        if (finding.Ratings is { } ratings) yield return ratings.Table();
        if (finding.Comments is { Counts.Count: > 0 } words) yield return words.Table();
        if (panel.Departures.Count > 0) yield return panel.TableOfDepartures();
    }
}
