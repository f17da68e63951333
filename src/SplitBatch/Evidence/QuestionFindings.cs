using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;

namespace SplitBatch.Evidence;

/// <summary>
/// What was found by the questions asked beside the difference: ratings, preference, words; and by the search for biases.
/// </summary>
internal static class QuestionFindings
{
    private const string Corrected = "corrected by Holm's method for all questions asked of the panel";

    public static IEnumerable<Finding> Of(CountedPanel panel, CountedPlan plan)
    {
        var name = panel.Plan.Name;
        if (panel.Ratings is { } asked)
        {
            foreach (var rating in asked.Ratings.Where(r => r.Group == RatingGroup.All || r.AdjustedPValue <= RatingCompared.Level))
            {
                yield return new RatingCompared(plan, rating)
                {
                    Method = $"Wilcoxon's signed ranks, exact, {Corrected}; Student's interval of the mean difference",
                    Sources = [.. panel.Sources, $"ratings-{name}.csv"],
                };
            }

            foreach (var preference in asked.Preferences.Where(p => p.Group == RatingGroup.All || p.PreferenceShown))
            {
                yield return new PreferenceCounted(plan, preference, asked.Questions)
                {
                    Method = $"{(preference.Test.IsUneven
                        ? "exact sum of binomials by the cups of each set, twice the smaller tail"
                        : "exact two-sided binomial test of those who chose")}, {Corrected}",
                    Sources = panel.Sources,
                };
            }
        }

        if (panel.Comments is { Counts: [{ A: var a, B: var b }, ..] } words && a + b > 0)
        {
            yield return new WordsTallied(plan, words)
            {
                Method = "tasters counted by descriptor; exact binomial of those who used a word of one half only, corrected by Holm's "
                    + "method for all words",
                Sources = [.. panel.Sources, $"comments-{name}.csv"],
            };
        }

        if (panel.Bias is { Checks.Count: > 0 } bias)
        {
            yield return new BiasesChecked(plan, bias)
            {
                Method = "chi-square by random dealing, with its seed, corrected by Holm's method",
                Sources = panel.Sources,
            };
        }
    }
}
