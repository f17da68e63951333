using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence;

/// <summary>What a count by itself allows one to say, without a trial folder around it: for exercises and single cells.</summary>
public static class CountInWords
{
    /// <summary>The count, the difference and the margin as a write-up would say them, one set for each taster.</summary>
    /// <param name="reading">The count with its limits, taken as declared before serving.</param>
    /// <exception cref="ArgumentException">Tasters had several sets; their sentences need the trial's ballots.</exception>
    public static IReadOnlyList<Claim> Of(PanelReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var (test, margin) = (reading.Difference, reading.Similarity);
        if (test.Repeats is not null)
            throw new ArgumentException("Tasters had several sets, so the count alone does not say what may be said.", nameof(reading));
        var plan = new PanelPlan(test.Protocol, test.Tasters) { Alpha = test.Alpha, Margin = margin.Margin, Beta = margin.Beta };
        var rules = new PanelRules(test.Protocol, DeclaredMargin.OfShare(margin.Margin)) { Alpha = test.Alpha, Beta = margin.Beta };
        var panel = new CountedPanel(plan, PanelDecision.Of(rules, PanelResult.Of(test.Tasters, test.Correct)), [], [])
        {
            People = test.Tasters, Sets = test.Tasters, Right = test.Correct, Reading = reading, Standing = PlanStanding.Declared,
        };
        return [.. PanelFindings.Results(panel)
            .Where(finding => finding is SetsCounted or CountBelowChance or DifferenceTested or MarginTested).Select(Claim.Of)];
    }
}
