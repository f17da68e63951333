using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Checks;

/// <summary>A trial that does not say which allergens its beers hold: its sheets are not printed.</summary>
internal sealed class AllergensNotNamed : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        if (facts.Content.Description.Allergens is not null) yield break;
        yield return new Fault(TrialFolder.DescriptionFile,
            "The trial does not say which allergens are in the beers, so its briefing and ballots are not printed.")
        {
            Column = "allergens",
            Accepted = $"a list of {string.Join(", ", Allergens.Accepted)}",
            Suggestion = "Name what is in either beer, in one list for both; it does not say which beer is which.",
            Severity = Severity.Warning,
        };
    }
}
