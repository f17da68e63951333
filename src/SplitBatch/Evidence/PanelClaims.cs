using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>What may be said of one panel, in plain words, each number in the ledger.</summary>
internal static class PanelClaims
{
    public static IEnumerable<Claim> Of(PanelFinding finding) =>
    [
        .. finding switch
        {
            { Sequential: { } path } => OfPath(finding, path),
            { YesNo: { } test } => OfYesNo(finding, test),
            _ => OfCount(finding, finding.Reading!),
        },
        .. QuestionClaims.Of(finding),
    ];

    private static IEnumerable<Claim> OfCount(PanelFinding finding, PanelReading reading)
    {
        var plan = finding.Plan;
        var id = $"panel.{plan.Name}";
        string[] planned = [.. finding.Sources, "trial.json"];
        yield return CountClaim(id, finding, reading.Difference);
        if (finding.Repeats is { } repeats) yield return RepeatsClaim(id, repeats, finding.Sources);
        yield return DifferenceClaim(id, plan, reading.Difference, planned);
        yield return MarginClaim(id, plan, reading.Similarity, planned);
        if (finding.Bayes is { } bayes) yield return BayesClaim(id, bayes, planned);
        if (reading.Answer == PanelAnswer.Inconclusive)
        {
            yield return new Claim(
                $"{id}.settle",
                $"With {reading.ToSettle.Always} tasters or more, every count of panel {plan.Name} would have answered one of the two questions.",
                "exact binomial: from this size on no count leaves both questions open",
                "trial.json");
        }
    }

    private static Claim CountClaim(string id, PanelFinding finding, DifferenceTest test)
    {
        const string Method = "count of ballots scored against the sealed key";
        var (plan, guessed) = (finding.Plan, test.Tasters * finding.Plan.Protocol.Chance);
        var people = finding.Repeats?.Tasters ?? test.Tasters;
        return (plan.Protocol.Sides, finding.Repeats) switch
        {
            (1, null) => new Claim($"{id}.count", $"{test.Tasters} blind sets were tasted by the {plan.Protocol.Name} protocol, and {test.Count} answers were right; guessing alone gives about {guessed:0.#}.", Method, finding.Sources),
            (1, _) => new Claim($"{id}.count", $"{people} people tasted {test.Tasters} blind sets by the {plan.Protocol.Name} protocol, and {test.Count} answers were right; guessing alone gives about {guessed:0.#}.", Method, finding.Sources),
            _ => new Claim($"{id}.count", $"{people} people tasted {test.Tasters} blind sets by the {plan.Protocol.Name} protocol; asked which is the more {plan.Attribute}, they named half {plan.Expected.ToString()} in {test.Correct} of them; guessing alone gives about {guessed:0.#}.", Method, finding.Sources),
        };
    }

    private static Claim RepeatsClaim(string id, ReplicatedTest repeats, string[] sources) => new(
        $"{id}.repeats",
        $"Repeats by one taster are not new tasters: for how many other people can tell the beers apart, the {repeats.Sets} sets are worth between {repeats.WorthTasters.Low:0} and {repeats.WorthTasters.High:0} tasters, and the limits below allow for it.",
        $"beta-binomial by maximum likelihood; overdispersion {(repeats.Corrected.PValue < 0.05 ? "shown" : "not shown")}, likelihood ratio against tasters who are all alike",
        sources);

    private static Claim DifferenceClaim(string id, PanelPlan plan, DifferenceTest test, string[] sources)
    {
        const string Method = "exact binomial test against guessing";
        var chance = 100 * test.PValue;
        var alpha = 100 * plan.Alpha;
        if (test.ByLeanings)
        {
            const string Signs = "exact test of the sign of each taster's net leaning";
            return test.DifferenceShown
                ? new Claim($"{id}.difference", $"If tasters leaned to either half equally often, so large a leaning would come up in {chance:0.0##} % of such panels, no more than the {alpha:0.##} % that was fixed beforehand: a difference is shown.", Signs, sources)
                : new Claim($"{id}.difference", $"If tasters leaned to either half equally often, so large a leaning would come up in {chance:0.#} % of such panels, more than the {alpha:0.##} % that was fixed beforehand, so no difference is shown.", Signs, sources);
        }

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
        var method = test.Repeats is null
            ? "exact one-sided binomial limit for the share of discriminators"
            : "one-sided limit for the share of discriminators by the profile likelihood of the beta-binomial, never below the exact binomial one";
        var allowed = 100 * test.StillAllowed;
        var margin = 100 * plan.Margin;
        var sure = 100 * (1 - plan.Beta);
        return test.MarginRuledOut
            ? new Claim(
                $"{id}.margin",
                $"That {margin:0.#} % or more of drinkers can tell the beers apart is ruled out; the count still allows up to {allowed:0.#} % (with {sure:0.#} % confidence).",
                method, sources)
            : new Claim(
                $"{id}.margin",
                $"The count still allows that up to {allowed:0.#} % of drinkers can tell the beers apart (with {sure:0.#} % confidence); the {margin:0.#} % that was declared to matter is not ruled out.",
                method, sources);
    }

    private static Claim BayesClaim(string id, BayesReading bayes, string[] sources)
    {
        var credible = bayes.Credible();
        const string Method = "exact posterior of the share of discriminators from a beta prior; Bayes factor against guessing alone";
        var (mean, low, high, margin, above) = (100 * bayes.Mean, 100 * credible.Low, 100 * credible.High, 100 * bayes.Margin, 100 * bayes.ChanceAboveMargin);
        var times = Math.Max(bayes.BayesFactor, 1 / bayes.BayesFactor);
        var side = bayes.BayesFactor >= 1 ? "by such a difference as by guessing alone" : "by guessing alone as by such a difference";
        return bayes is { PriorA: 1, PriorB: 1 }
            ? new Claim($"{id}.bayes", $"To someone who beforehand held every share equally likely, about {mean:0} % of drinkers tell the beers apart now (between {low:0.#} and {high:0} % with a probability of {100 * credible.Level:0} %), and more than {margin:0.#} % do with a probability of {above:0.#} %; the count is foretold {times:0.0} times as well {side}.", Method, sources)
            : new Claim($"{id}.bayes", $"To someone with the prior that was declared, a beta distribution with {bayes.PriorA:0.##} and {bayes.PriorB:0.##}, about {mean:0} % of drinkers tell the beers apart now (between {low:0.#} and {high:0} % with a probability of {100 * credible.Level:0} %), and more than {margin:0.#} % do with a probability of {above:0.#} %; the count is foretold {times:0.0} times as well {side}.", Method, sources);
    }

    private static IEnumerable<Claim> OfPath(PanelFinding finding, WaldPath path)
    {
        var (plan, id) = (finding.Plan, $"panel.{finding.Plan.Name}");
        string[] planned = [.. finding.Sources, "trial.json"];
        yield return new Claim(
            $"{id}.count",
            $"{path.Tasters} blind sets were tasted one after another by the {plan.Protocol.Name} protocol, and {path.Correct} answers were right; guessing alone gives about {path.Tasters * plan.Protocol.Chance:0.#}.",
            "ballots scored against the sealed key, in the order in which they came in",
            finding.Sources);
        var (none, margin) = (path.Plan.At(path.Plan.None), path.Plan.At(path.Plan.Margin));
        var text = path.Decision switch
        {
            SequentialDecision.Different => "The count reached the upper of the two lines that were fixed beforehand, and the panel stopped: a difference is shown.",
            SequentialDecision.Similar => "The count reached the lower of the two lines that were fixed beforehand, and the panel stopped: a difference as large as the margin is ruled out.",
            SequentialDecision.Undecided => "After the last taster the count lay between the two lines that were fixed beforehand: nothing is decided, which does not mean the same.",
            _ => "The count lies between the two lines that were fixed beforehand: the panel is not finished, and the next taster is to be served.",
        };
        yield return new Claim(
            $"{id}.difference",
            $"{text} By this plan a panel of guessers shows a false difference in {100 * none.Different:0.#} % of cases, and one with the margin of {100 * plan.Margin:0.#} % discriminators is wrongly let pass in {100 * margin.Similar:0.#} %; on average they take {none.Tasters:0} and {margin.Tasters:0} tasters.",
            "Wald's sequential test; true rates by exact dynamic programming",
            planned);
    }

    private static IEnumerable<Claim> OfYesNo(PanelFinding finding, YesNoTest test)
    {
        var (plan, id) = (finding.Plan, $"panel.{finding.Plan.Name}");
        var (sets, word) = ReferenceEquals(plan.Protocol, Protocol.ANotA) ? ("cups of half B", "called not A") : ("pairs of unlike beers", "called different");
        var alike = ReferenceEquals(plan.Protocol, Protocol.ANotA) ? "cups of half A" : "pairs of one beer";
        yield return new Claim(
            $"{id}.count",
            $"{test.Different + test.Alike} blind sets were tasted by the {plan.Protocol.Name} protocol: of {test.Different} {sets} {test.Hits} were {word}, and of {test.Alike} {alike} {test.FalseAlarms}.",
            "count of ballots scored against the sealed key",
            finding.Sources);
        const string Method = "Fisher's exact test, one-sided";
        var (chance, alpha) = (100 * test.PValue, 100 * plan.Alpha);
        string[] planned = [.. finding.Sources, "trial.json"];
        yield return test.DifferenceShown
            ? new Claim($"{id}.difference", $"If both kinds of set were answered alike, counts so far apart would come up in {chance:0.0##} % of such panels, no more than the {alpha:0.##} % that was fixed beforehand: a difference is shown.", Method, planned)
            : new Claim($"{id}.difference", $"If both kinds of set were answered alike, counts so far apart would come up in {chance:0.#} % of such panels, more than the {alpha:0.##} % that was fixed beforehand, so no difference is shown, which does not mean the same; this protocol rules no margin out.", Method, planned);
    }
}
