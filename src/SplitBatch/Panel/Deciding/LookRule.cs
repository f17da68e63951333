using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>Which rule the looks at a count ask for.</summary>
/// <param name="IsAnyTime">Somebody looked without a plan, or stopped where no look was planned.</param>
/// <param name="Looks">The planned looks, of which the count is one; null where there are none.</param>
internal sealed record LookRule(bool IsAnyTime, int[]? Looks)
{
    public static LookRule Of(PanelRules rules, PanelResult result)
    {
        var planned = rules.PlannedLooks;
        if (result.LookedEarly) return new(true, null);
        if (planned.Count < 2) return new(false, null);
        if (planned.Contains(result.Sets)) return new(false, [.. planned]);
        // The last look falls where the ballots end, a few more or fewer; between two looks nobody had planned to stop.
        return planned.SkipLast(1).Last() < result.Sets ? new(false, [.. planned.SkipLast(1), result.Sets]) : new(true, null);
    }
}
