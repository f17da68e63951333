using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>What a count weighs: repeats, likelihood, a prior, and the size that would have settled it.</summary>
internal static class WeighedPhrases
{
    public static Sentence Of(RepeatsWeighed finding) => Sentence.Of(
        $"Repeats by one taster are not new tasters: what is said of other people counts "
            + $"{Printed.Count(finding.People, "person", "people")} and not {Printed.Count(finding.Sets, "set")}.");

    public static Sentence Of(LikelihoodWeighed finding)
    {
        var able = Sentence.Of($"{PlanPhrases.Margin(finding.Plan)} of such tasters can tell in this "
            + $"task{(finding.Plan.IsDirected ? " and find the halves as expected" : "")}");
        return finding.Ratio >= 1
            ? Sentence.Of($"This count is {Printed.Times(finding.Ratio)} times as likely if {able} as if everybody guesses.")
            : Sentence.Of($"This count is {Printed.Times(1 / finding.Ratio)} times as likely if everybody guesses as if {able}.");
    }

    public static Sentence Of(PriorWeighed finding) => Sentence.Of(
        $"To someone with the prior that the plan states, a beta distribution with {Printed.Chosen(finding.PriorA)} and "
            + $"{Printed.Chosen(finding.PriorB)}, more than {PlanPhrases.Margin(finding.Plan)} of such tasters can tell in this task with "
            + $"a probability of {Printed.Percent(finding.AboveMargin)}.");

    /// <summary>
    /// Every count, the low ones too: those below what guessing gives rule the margin out, until they are so low that the alarm goes. A
    /// two-sided pair expects neither half, and has no alarm.
    /// </summary>
    public static Sentence Of(SizeToSettle finding)
    {
        var answers = Sentence.Of($"From {Printed.Count(finding.Tasters, "taster")} on, one set each, every count would have answered one "
            + $"of the two questions of panel {new Name(finding.Plan.Panel)}");
        return finding.Plan.Protocol.Sides == 2
            ? Sentence.Of($"{answers}.")
            : Sentence.Of($"{answers}, or been so low that something must be wrong.");
    }
}
