using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>What may be said of the questions asked beside the difference: ratings, preference, words; and of biases looked for.</summary>
internal static class QuestionClaims
{
    private const string Corrected = "corrected by Holm's method for all questions asked of the panel";

    public static IEnumerable<Claim> Of(PanelFinding finding)
    {
        var id = $"panel.{finding.Plan.Name}";
        if (finding.Ratings is { } asked)
        {
            string[] rated = [.. finding.Sources, $"ratings-{finding.Plan.Name}.csv"];
            foreach (var rating in asked.Ratings.Where(r => r.Group == RatingGroup.All || r.AdjustedPValue <= 0.05)) yield return RatingClaim(id, rating, rated);
            foreach (var preference in asked.Preferences.Where(p => p.Group == RatingGroup.All || p.PreferenceShown)) yield return PreferenceClaim(id, preference, finding.Sources);
        }

        if (finding.Comments is { Counts.Count: > 0 } words) yield return WordsClaim(id, words, [.. finding.Sources, $"comments-{finding.Plan.Name}.csv"]);
        if (finding.Bias is { Checks.Count: > 0 } bias)
        {
            yield return Claim.InWords(
                $"{id}.bias",
                bias.Checks.Any(check => check.BiasShown)
                    ? $"The answers of panel {finding.Plan.Name} depended on something besides the beers; what limits the trial names it."
                    : $"The checks of panel {finding.Plan.Name} whether order, position, code or the odd beer drove the answers show no bias, which does not rule one out in a panel of this size.",
                "chi-square by random dealing, with its seed, corrected by Holm's method",
                finding.Sources);
        }
    }

    private static Claim RatingClaim(string id, RatingComparison rating, string[] sources)
    {
        var who = rating.Group == RatingGroup.All ? "tasters" : "tasters who answered right, some of them by guessing";
        var outcome = rating.AdjustedPValue <= 0.05 ? "a difference is shown" : "no difference is shown, which does not mean the same";
        var name = $"{id}.rating.{rating.Attribute}{(rating.Group == RatingGroup.All ? "" : ".right")}";
        var method = $"Wilcoxon's signed ranks, exact, {Corrected}; Student's interval of the mean difference";
        return rating.DifferenceInterval is { } interval
            ? new Claim(name, $"Rated for {rating.Attribute} by {rating.Tasters} {who}, half B stands {rating.Difference:+0.0;-0.0;0.0} from half A (between {interval.Low:+0.0;-0.0;0.0} and {interval.High:+0.0;-0.0;0.0} with {100 * interval.Level:0} % confidence); p = {rating.Ranks.PValue:0.000}, after correction for {rating.Questions} questions {rating.AdjustedPValue:0.000}: {outcome}.", method, sources)
            : new Claim(name, $"Rated for {rating.Attribute} by {rating.Tasters} {who}, half B stands {rating.Difference:+0.0;-0.0;0.0} from half A; p = {rating.Ranks.PValue:0.000}, after correction for {rating.Questions} questions {rating.AdjustedPValue:0.000}: {outcome}.", method, sources);
    }

    private static Claim PreferenceClaim(string id, PreferenceAmong preference, string[] sources)
    {
        var test = preference.Test;
        var who = preference.Group == RatingGroup.All ? "tasters" : "tasters who answered right, some of them by guessing";
        var outcome = preference.PreferenceShown ? "a preference is shown" : "no preference is shown, which does not mean that both are liked alike";
        return new Claim(
            $"{id}.preference{(preference.Group == RatingGroup.All ? "" : ".right")}",
            $"Asked which they prefer, {test.ForA} {who} chose half A, {test.ForB} half B and {test.None} neither; p = {test.PValue:0.000}, after correction {preference.AdjustedPValue:0.000}: {outcome}.",
            $"exact two-sided binomial test of those who chose, {Corrected}",
            sources);
    }

    private static Claim WordsClaim(string id, CommentTally words, string[] sources)
    {
        const string Method = "tasters counted by descriptor; exact binomial of those who used a word of one half only, corrected by Holm's method for all words";
        var apart = words.Counts.Where(count => count.AdjustedPValue <= 0.05).ToList();
        if (apart.Count > 0)
        {
            var word = apart[0];
            return new Claim($"{id}.words", $"In {words.Comments} comments \"{word.Descriptor.Name}\" sets the halves apart: {word.A} tasters used it of half A and {word.B} of half B (p = {word.AdjustedPValue:0.000} after correction for all descriptors).", Method, sources);
        }

        var most = words.Counts[0];
        return new Claim($"{id}.words", $"In {words.Comments} comments the most used descriptor is \"{most.Descriptor.Name}\", by {most.A} tasters of half A and {most.B} of half B; after correction for all descriptors none sets the halves apart.", Method, sources);
    }
}
