using System.Globalization;
using SplitBatch.Panel;

namespace SplitBatch.Trials.Checks;

/// <summary>A panel that is more likely to miss a difference as large as its margin than to show it.</summary>
internal sealed class PanelLacksPower : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from panel in facts.Content.Panels
        let plan = panel.Plan
        where plan.Protocol.HasKnownChance
        let power = Power.Of(plan.Protocol, plan.Tasters, plan.Alpha, plan.Margin)
        where power < Math.Min(plan.Power, 0.5)
        let needed = Power.TastersNeeded(plan.Protocol, plan.Alpha, plan.Power, plan.Margin)
        select facts.InPanel(
            panel, "tasters", plan.Tasters.ToString(CultureInfo.InvariantCulture),
            $"{plan.Tasters} tasters are more likely to miss a difference as large as the margin than to show it: it is shown in {Counts.Percent(power)} of such panels, and the plan wants {Counts.Percent(plan.Power)}.",
            $"{needed.First} tasters or more for the power that the plan wants",
            "Plan more tasters, or a larger margin; both have to be decided before pouring.");
}
