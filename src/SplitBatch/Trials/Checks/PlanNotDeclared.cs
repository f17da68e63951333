namespace SplitBatch.Trials.Checks;

/// <summary>A panel without the day on which its plan was declared, or with one that lies after the first ballot.</summary>
internal sealed class PlanNotDeclared : ITrialCheck
{
    private const string Accepted = "the day on which the plan was fixed, before the first cup is poured, as \"declared\": \"2026-03-14\"";

    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var panel in facts.Content.Panels)
        {
            if (panel.Plan.Declared is not { } declared)
            {
                yield return facts.InPanel(panel, "declared", null, $"The plan of panel {panel.Name} is not declared: a result without a plan fixed beforehand is a lead to follow and not a test.", Accepted);
            }
            else if (panel.Ballots.Min(ballot => ballot.When) is { } first && DateOnly.FromDateTime(first.DateTime) is var served && served < declared)
            {
                yield return facts.InPanel(panel, "declared", TrialFacts.Day(declared), $"The plan of panel {panel.Name} was declared after its first ballot ({TrialFacts.Day(served)}), so its result is a lead to follow and not a test.", Accepted);
            }
        }
    }
}
