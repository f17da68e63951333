using SplitBatch.Panel;

namespace SplitBatch.Evidence;

/// <summary>What may be said of one panel, in plain words, each number in the ledger.</summary>
internal static class PanelClaims
{
    public static IEnumerable<Claim> Of(PanelFinding finding)
    {
        var (plan, reading) = (finding.Plan, finding.Reading);
        var (difference, similarity) = (reading.Difference, reading.Similarity);
        var id = $"panel.{plan.Name}";
        string[] sources = [$"ballots-{plan.Name}.csv", $"serving-{plan.Name}.csv"];
        string[] planned = [.. sources, "trial.json"];

        yield return new Claim(
            $"{id}.count",
            $"{difference.Tasters} blind sets were tasted by the {plan.Protocol.Name} protocol, and {difference.Count} answers were right; guessing alone gives about {difference.Tasters * plan.Protocol.Chance:0.#}.",
            "count of ballots scored against the sealed key",
            sources);
        yield return DifferenceClaim(id, plan, difference, planned);
        yield return MarginClaim(id, plan, similarity, planned);
        if (reading.Answer == PanelAnswer.Inconclusive)
        {
            yield return new Claim(
                $"{id}.settle",
                $"With {reading.ToSettle.Always} tasters or more, every count would have answered one of the two questions.",
                "exact binomial: from this size on no count leaves both questions open",
                "trial.json");
        }
    }

    private static Claim DifferenceClaim(string id, PanelPlan plan, DifferenceTest test, string[] sources)
    {
        const string Method = "exact binomial test against guessing";
        var chance = 100 * test.PValue;
        var alpha = 100 * plan.Alpha;
        return (test.DifferenceShown, test.CriticalCount) switch
        {
            (true, _) => new Claim(
                $"{id}.difference",
                $"Guessing alone would give a count like this or higher in {chance:0.0##} % of such panels, no more than the {alpha:0.##} % that was fixed beforehand: a difference is shown.",
                Method, sources),
            (false, { } needed) => new Claim(
                $"{id}.difference",
                $"Guessing alone would give a count like this or higher in {chance:0.#} % of such panels, more than the {alpha:0.##} % that was fixed beforehand, so no difference is shown; {needed} right answers would have been needed.",
                Method, sources),
            _ => new Claim(
                $"{id}.difference",
                $"So small a panel could not have shown a difference at the {alpha:0.##} % that was fixed beforehand, whatever it answered.",
                Method, sources),
        };
    }

    private static Claim MarginClaim(string id, PanelPlan plan, SimilarityTest test, string[] sources)
    {
        const string Method = "exact one-sided binomial limit for the share of discriminators";
        var allowed = 100 * test.StillAllowed;
        var margin = 100 * plan.Margin;
        var sure = 100 * (1 - plan.Beta);
        return test.MarginRuledOut
            ? new Claim(
                $"{id}.margin",
                $"That {margin:0.#} % or more of drinkers can tell the beers apart is ruled out; the count still allows up to {allowed:0.#} % (with {sure:0.#} % confidence).",
                Method, sources)
            : new Claim(
                $"{id}.margin",
                $"The count still allows that up to {allowed:0.#} % of drinkers can tell the beers apart (with {sure:0.#} % confidence); the {margin:0.#} % that was declared to matter is not ruled out.",
                Method, sources);
    }}
