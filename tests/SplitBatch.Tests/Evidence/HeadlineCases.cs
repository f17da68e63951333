using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>Main panels of every answer, and what else could explain it.</summary>
internal static class HeadlineCases
{
    /// <summary>Every main panel, kept to its plan or not, beside everything that could explain its answer otherwise.</summary>
    public static IEnumerable<(string Name, TrialEvidence Evidence)> All()
    {
        foreach (var (outcome, panel) in MainPanels())
        {
            foreach (var lead in new[] { false, true })
            {
                foreach (var (state, change) in Otherwise())
                {
                    yield return ($"{outcome}{(lead ? ", plan left" : "")}; {state}",
                        change(SamplePanel.Trial(panel is null ? [] : [lead ? AsLead(panel) : panel])));
                    if (panel is null) break;
                }
            }
        }
    }

    private static IEnumerable<(string Outcome, CountedPanel? Panel)> MainPanels()
    {
        yield return ("no panel", null);
        yield return ("under way", SamplePanel.Sequential(Protocol.Triangle, 60, i => i % 7 is 0 or 2 or 4, upTo: 5));
        yield return ("below chance", SamplePanel.Single(Protocol.PairedDirectional, 60, 15));
        yield return ("shown", SamplePanel.Single(Protocol.Triangle, 24, 15));
        yield return ("shown by a two-sided pair", SamplePanel.Single(Protocol.PairedTwoSided, 60, 15));
        yield return ("shown by A-not-A", SamplePanel.YesNo(Protocol.ANotA, 40, 50, 15, 50));
        yield return ("shown, small", SamplePanel.Single(Protocol.Triangle, 300, 118));
        yield return ("ruled out", SamplePanel.Single(Protocol.Tetrad, 60, 20));
        yield return ("ruled out by a directed sequential panel", SamplePanel.Sequential(Protocol.ThreeAfc, 60, i => i % 4 == 0));
        yield return ("open", SamplePanel.Single(Protocol.DuoTrio, 24, 13));
        yield return ("open, one set", SamplePanel.Single(Protocol.TwoOutOfFive, 1, 1));
        yield return ("preference shown",
            SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 60) with { Attribute = "preferred" }, PanelResult.Of(60, 15)));
        yield return ("preference shown for B",
            SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 60) with { Attribute = "preferred" }, PanelResult.Of(60, 45)));
        yield return ("preference not shown",
            SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 24) with { Attribute = "preferred" }, PanelResult.Of(24, 12)));
    }

    private static IEnumerable<(string State, Func<TrialEvidence, TrialEvidence> Change)> Otherwise()
    {
        yield return ("nothing else known", e => e with { Parity = BatchCases.Log() });
        yield return ("no log", e => e);
        yield return ("lab gap", e => e with { Bitterness = SampleLab.Apart, Parity = BatchCases.Log() });
        yield return ("lab gap that is the variable",
            e => e with { Bitterness = SampleLab.Apart, Variable = "bitterness", Parity = BatchCases.Log() });
        yield return ("lab gap and long names",
            e => e with { Bitterness = SampleLab.Apart, NameA = "whole cones of the first harvest, kept cold",
                NameB = "pellets of the same harvest, kept cold", Parity = BatchCases.Log() });
        yield return ("logged inequality",
            e => e with
            {
                Parity = BatchCases.Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05),
                    BatchEntry.Measured("2", Side.B, "pH", 4.6, "pH", 0.05)),
            });
        yield return ("lots unlike",
            e => e with { HopConfounds = [new(HopDifference.CropYear, "2024", "2025", "Crops differ.")], Parity = BatchCases.Log() });
        yield return ("not measured", e => e with { Parity = new BatchLog([]).Parity() });
        yield return ("long names, nothing else known",
            e => e with { NameA = "whole cones of the first harvest, kept cold", NameB = "pellets of the same harvest, kept cold",
                Parity = BatchCases.Log() });
    }

    private static CountedPanel AsLead(CountedPanel panel) => panel with
    {
        Standing = PlanStanding.NotDeclared,
        Departures = (panel.Plan with { Declared = null }).Departures(new(panel.Plan.Protocol, panel.Plan.Tasters, panel.Plan.Sets)),
    };
}
