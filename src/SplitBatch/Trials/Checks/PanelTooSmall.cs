using System.Globalization;
using SplitBatch.Panel;

namespace SplitBatch.Trials.Checks;

/// <summary>A panel so small that no count of right answers could rule its margin out.</summary>
internal sealed class PanelTooSmall : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from panel in facts.Content.Panels
        let plan = panel.Plan
        where plan.Protocol.HasKnownChance && !(plan.SimilarityCount >= plan.Tasters * plan.Protocol.Chance)
        let needed = Enough(plan)
        select facts.InPanel(
            panel, "tasters", plan.Tasters.ToString(CultureInfo.InvariantCulture),
            $"{plan.Tasters} tasters are too few for the declared margin: no count, not even that of mere guessing, rules out {Counts.Percent(plan.Margin)} discriminators (beta {Counts.Percent(plan.Beta)}).",
            $"{needed} tasters or more for this margin",
            "More tasters, a larger margin or a larger beta; each has to be decided before pouring.");

    /// <summary>The first size whose limit reaches the count that guessing gives on average.</summary>
    private static int Enough(PanelPlan plan)
    {
        var tasters = plan.Tasters;
        while (Power.SimilarityCount(plan.Protocol, tasters, plan.Margin, plan.Beta) < tasters * plan.Protocol.Chance && tasters < Limit) tasters++;
        return tasters;
    }

    private const int Limit = 5000;
}
