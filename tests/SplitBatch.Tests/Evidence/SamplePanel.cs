using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>Counted panels without a folder around them: a plan, a count, and what else decides.</summary>
internal static class SamplePanel
{
    public static PanelPlan Plan(Protocol protocol, int tasters, double margin = 0.30, string name = "main") =>
        new(protocol, tasters) { Name = name, Margin = margin, Declared = new DateOnly(2026, 3, 14) };

    /// <summary>Everybody tasted one set.</summary>
    public static CountedPanel Single(Protocol protocol, int tasters, int right, double margin = 0.30, string name = "main",
        int missing = 0) =>
            Of(Plan(protocol, tasters, margin, name), PanelResult.Of(tasters, right, missing));

    /// <summary>People with several sets each.</summary>
    public static CountedPanel Repeats(Protocol protocol, IReadOnlyList<TasterCount> tasters, double margin = 0.30) =>
        Of(Plan(protocol, tasters.Count, margin) with { Replicates = tasters[0].Sets }, new(tasters));

    public static CountedPanel Of(PanelPlan plan, PanelResult result, bool controlDeclared = false, int[]? looks = null)
    {
        var rules = new PanelRules(plan.Protocol, DeclaredMargin.OfShare(plan.Margin))
        {
            Alpha = plan.Alpha,
            Beta = plan.Beta,
            ControlDeclared = controlDeclared,
            PlannedLooks = looks ?? [],
        };
        var reading = result.HasRepeats
            ? PanelReading.OfRepeats(plan.Protocol, result.Tasters, plan.Margin, plan.Alpha, plan.Beta)
            : PanelReading.Of(plan.Protocol, result.Sets, result.Right, plan.Margin, plan.Alpha, plan.Beta);
        return new(plan, PanelDecision.Of(rules, result), [], [])
        {
            People = result.Tasters.Count, Sets = result.Sets, Right = result.Right, Missing = result.Missing.Sum(),
            Standing = PlanStanding.Sealed,
            Reading = reading, Repeats = result.HasRepeats ? reading.Similarity.Repeats : null, Control = result.Control,
        };
    }

    public static CountedPanel YesNo(Protocol protocol, int hits, int different, int falseAlarms, int alike)
    {
        var test = YesNoTest.Of(protocol, hits, different, falseAlarms, alike);
        return new(Plan(protocol, different + alike), PanelDecision.Of(test), [], [])
        {
            People = different + alike, Sets = different + alike, Right = hits + alike - falseAlarms, YesNo = test,
            Standing = PlanStanding.Sealed,
        };
    }

    /// <summary>A panel that stops at one of two lines; answers are right in the given rhythm.</summary>
    public static CountedPanel Sequential(Protocol protocol, int last, Func<int, bool> right, int? upTo = null)
    {
        var plan = Plan(protocol, last) with { Stopping = StoppingRule.Sequential };
        var path = plan.Sequential().Follow(Enumerable.Range(0, upTo ?? last).Select(right));
        return Of(plan, PanelResult.Of(path.Tasters, path.Correct)) with { Sequential = path };
    }

    public static Verdict Verdict(params CountedPanel[] panels) => Evidence.Verdict.Of(Trial(panels));

    public static TrialEvidence Trial(params CountedPanel[] panels) =>
        new() { Variable = "form of the bittering hop", NameA = "cones", NameB = "pellets", Panels = panels };
}
