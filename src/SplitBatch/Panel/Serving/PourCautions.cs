using static System.FormattableString;

namespace SplitBatch.Panel.Serving;

/// <summary>What to mind when people are served alcohol for a test. Common practice, no source, except where one is named.</summary>
internal static class PourCautions
{
    /// <summary>
    /// From this many grams of alcohol in one sitting the plan says so; the house's own line, not a limit that anyone has declared safe.
    /// </summary>
    private const double ManyGrams = 20;

    internal static IReadOnlyList<string> For(PourPlan plan, int setsInASitting, double alcoholGap)
    {
        var options = plan.Options;
        var most = plan.Most;
        List<string> cautions = [];
        if (most.AlcoholMass.Grams > ManyGrams)
            cautions.Add(Invariant($"One taster gets up to {Printed.Mass(most.AlcoholMass, UnitSystem.Metric)} of alcohol in one ")
                + Invariant($"sitting. Pour less, use fewer sets or more sittings, and offer a bowl to spit into."));
        if (setsInASitting > 4)
            cautions.Add(Invariant($"{setsInASitting} sets in one sitting tire the palate; 2 to 4 sets of bitter beer are usual. Spread ")
                + Invariant($"them over several sittings."));
        if (alcoholGap >= 0.5)
            cautions.Add(Invariant($"The beers differ by {Printed.Alcohol(alcoholGap)} in alcohol, which tasters may notice instead of ")
                + Invariant($"the variable."));
        cautions.AddRange(
        [
            options.Allergens is { } allergens
                ? $"Allergens in the beers, to be read out before the first cup: {allergens}."
                : "Nobody has said yet which allergens are in the beers. Name them before anybody tastes, even if there is only barley.",
            .. Cautions.AtTheTasting.Sentences,
            Invariant($"Pour the same volume at the same temperature, {options.ServedAt}, into the same kind of cup; keep the cups ")
                + Invariant($"covered for {Printed.Minutes(options.Settle.Minutes)} (5 to 10 is usual)."),
            "Hide a difference in colour or haze with dark cups or dim or coloured light (ISO 4120). Tell tasters whether to swallow.",
            Invariant($"Rest {Printed.Minutes(options.Rest.Minutes)} between sets with water (2 to 5 is usual). No talk about the beers ")
                + Invariant($"until every ballot is in."),
            "Whoever pours knows the key, works in another room or behind a screen, and does not serve. Whoever serves does not know "
                + "the key.",
            .. Cautions.WithPeoplesAnswers.Sentences,
        ]);
        return cautions;
    }
}
