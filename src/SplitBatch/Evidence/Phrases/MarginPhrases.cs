using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>
/// Is a difference as large as the margin ruled out? The share belongs to the task; the limit is the one upper limit of this count.
/// </summary>
internal static class MarginPhrases
{
    public static Sentence Of(MarginTested finding)
    {
        var margin = PlanPhrases.Margin(finding.Plan);
        var allowed = Allowed(finding);
        return finding.Outcome == MarginOutcome.RuledOut
            ? Sentence.Of($"That {margin} or more of such tasters can tell the beers apart in this task is ruled out{allowed}.")
                + DPrime(finding)
            : Sentence.Of($"It is not ruled out that {margin} or more of such tasters can tell the beers apart in this task{allowed}.")
                + Why(finding) + DPrime(finding);
    }

    /// <summary>Whether the limit is printed: a limit below a margin that is not ruled out would seem to contradict it.</summary>
    private static bool PrintsLimit(MarginTested finding) => finding.Decision.StillAllowed is { } allowed
        && (finding.Outcome == MarginOutcome.RuledOut
            || Math.Max(allowed, finding.Decision.StillAllowedReversed ?? 0) >= finding.Plan.Margin);

    private static Sentence Allowed(MarginTested finding)
    {
        var confidence = PlanPhrases.Confidence(finding.Plan);
        if (!PrintsLimit(finding)) return Sentence.Of($" ({confidence})");
        var up = Printed.Percent(finding.Decision.StillAllowed!.Value, against: finding.Plan.Margin);
        return finding.Decision.StillAllowedReversed is > 0 and var reversed
            ? Sentence.Of($"; the count allows up to {up} who find them as expected and up to "
                + $"{Printed.Percent(reversed, against: finding.Plan.Margin)} who find them the other way round ({confidence})")
            : Sentence.Of($"; the count allows up to {up} ({confidence})");
    }

    /// <summary>The same limit on the scale on which protocols can be compared.</summary>
    private static Sentence DPrime(MarginTested finding) =>
        (PrintsLimit(finding), finding.Plan.MarginDPrime, finding.Decision.StillAllowedDPrime) switch
        {
            (true, { } margin, { } limit) when double.IsFinite(limit) =>
                Sentence.Of($"If all tasters are alike, {PlanPhrases.Margin(finding.Plan)} is a d-prime of "
                    + $"{Printed.DPrime(margin)}{Declared(finding, ",")} and the limit one of {Printed.DPrime(limit)}."),
            (_, { } margin, _) =>
                Sentence.Of($"If all tasters are alike, {PlanPhrases.Margin(finding.Plan)} is a d-prime of "
                    + $"{Printed.DPrime(margin)}{Declared(finding, "")}."),
            _ => Sentence.Empty,
        };

    private static string Declared(MarginTested finding, string after) =>
        finding.Plan.DeclaredMargin.IsDPrime ? $", as which the margin is stated{after}" : "";

    /// <summary>What stood in the way.</summary>
    private static Sentence Why(MarginTested finding) => finding.Outcome switch
    {
        MarginOutcome.TooFewSets => Sentence.Of($"No count of {Printed.Count(finding.Sets, "set")} rules it out."),
        MarginOutcome.TooFewPeople when finding.NobodyAble > finding.Plan.Beta =>
            Sentence.Of($"No count of {Printed.Count(finding.People, "person", "people")} with {Printed.Count(finding.Sets, "set")} rules "
                + $"it out: if it is so, in {Printed.Percent(finding.NobodyAble)} of such panels none of them can tell."),
        MarginOutcome.TooFewPeople =>
            Sentence.Of($"No count of {Printed.Count(finding.People, "person", "people")} with {Printed.Count(finding.Sets, "set")} "
                + $"rules it out."),
        MarginOutcome.OtherWayRound =>
            Sentence.Of($"The count lies below what guessing gives, so the halves may stand the other way round."),
        MarginOutcome.TooSteady => Sentence.Of($"Too many tasters always chose the same half, some perhaps the one and some the other."),
        MarginOutcome.LookedTooOften => Sentence.Of($"A panel read once would have ruled it out; this one was looked at before its end."),
        MarginOutcome.ControlNotTold => Sentence.Of($"The count would rule it out, but this panel did not tell its control."),
        _ => Sentence.Empty,
    };
}
