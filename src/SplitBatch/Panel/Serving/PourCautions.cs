using static System.FormattableString;

namespace SplitBatch.Panel.Serving;

/// <summary>What to mind when people are served alcohol for a test. Common practice, no source, except where one is named.</summary>
internal static class PourCautions
{
    /// <summary>From this many grams of alcohol in one sitting the plan says so; the house's own line, not a limit that anyone has declared safe.</summary>
    private const double ManyGrams = 20;

    internal static IReadOnlyList<string> For(PourPlan plan, int setsInASitting, double alcoholGap)
    {
        var options = plan.Options;
        var most = plan.Most;
        List<string> cautions = [];
        if (most.AlcoholMass.Grams > ManyGrams)
            cautions.Add(Invariant($"One taster gets {most.AlcoholMass.Grams:0.0} g of alcohol in one sitting. Pour less, use fewer sets or more sittings, and offer a bowl to spit into."));
        if (setsInASitting > 4)
            cautions.Add(Invariant($"{setsInASitting} sets in one sitting tire the palate; 2 to 4 sets of bitter beer are usual. Spread them over more sittings."));
        if (alcoholGap >= 0.5)
            cautions.Add(Invariant($"The beers differ by {alcoholGap:0.0} % in alcohol, which tasters may notice instead of the variable."));
        cautions.AddRange(
        [
            "Adults only: check the age that local law asks for.",
            "Nobody who is pregnant, takes medicine that does not go with alcohol, has been told not to drink, or will drive, ride or work machines afterwards. Ask before, in private, and accept no for an answer without a reason.",
            $"Read the allergens out before the first cup: {(options.Allergens.Count == 0 ? "none were named; check the recipe for gluten, lactose, sulphite, nuts and fruit" : string.Join(", ", options.Allergens))}.",
            "Follow local law on serving alcohol, on home-brewed beer and on the place where it is served; where it asks for a licence or trained staff, it comes before this plan.",
            "Give water and plain crackers, food before and after, and a way home that needs no driving. Tasters may spit, and may stop at any time.",
            Invariant($"Pour the same volume at the same temperature, {options.ServedAt}, into the same kind of cup; keep the cups covered for {options.Settle.Minutes:0} min (5 to 10 is usual)."),
            "Hide a difference in colour or haze with dark cups or dim or coloured light (ISO 4120). Tell tasters whether to swallow.",
            Invariant($"Rest {options.Rest.Minutes:0} min between sets with water (2 to 5 is usual). No talk about the beers until every ballot is in."),
            "Who pours knows the key and stays out of the room; who serves does not know it.",
        ]);
        return cautions;
    }
}
