using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Panels that stop at one of two lines.</summary>
internal static class SequentialPhrases
{
    public static Sentence Of(SequentialDecided finding)
    {
        var margin = PlanPhrases.Margin(finding.Plan);
        var direction = finding.Plan.IsDirected ? ", in the direction expected," : "";
        var decided = finding.Decision switch
        {
            SequentialDecision.Different =>
                Sentence.Of($"The count reached the upper of the two lines of the plan, and the panel stopped: a difference is shown."),
            SequentialDecision.Similar =>
                Sentence.Of($"The count reached the lower of the two lines of the plan, and the panel stopped: that {margin} or more of "
                    + $"such tasters can tell the beers apart in this task{direction} is ruled out."),
            SequentialDecision.Undecided =>
                Sentence.Of($"After the last taster the count lay between the two lines of the plan: nothing is decided, which does not "
                    + $"mean that there is no difference."),
            _ => Sentence.Of($"The count lies between the two lines of the plan: the panel is not finished, and the next taster is to "
                + $"be served."),
        };
        return decided
            + Sentence.Of($"By this plan a panel of guessers shows a false difference in {Printed.Percent(finding.FalselyShown)} of "
                + $"cases, and one in which {margin} can tell is let pass in {Printed.Percent(finding.FalselyRuledOut)}; on average they "
                + $"take {Printed.Expected(finding.TastersIfNone)} and {Printed.Expected(finding.TastersAtMargin)} tasters.");
    }
}
