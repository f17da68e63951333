using SplitBatch.Panel;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Trials.Reading;

/// <summary>A panel's plan and ballots as the rules and the result that decide what its count says.</summary>
internal static class PanelDecisions
{
    /// <summary>What a panel's count decides; that of a sequential panel is read up to where it stopped.</summary>
    public static PanelDecision Of(PanelRecord panel)
    {
        if (panel.YesNo is { } test) return PanelDecision.Of(test);
        var plan = panel.Plan;
        var rules = PanelRules.Of(plan);
        return PanelDecision.Of(rules, panel.Sequential is { } path
            ? PanelResult.Of(path.Tasters, path.Correct)
            : Result(panel) with { LookedEarly = panel.Custody.Looks.Count > 0 && plan.Replicates == 1 });
    }

    private static PanelResult Result(PanelRecord panel)
    {
        var scored = panel.Scored;
        var missing = scored.Rules.Missing == BallotRule.CountAsWrong ? [] : scored.Missing.CountBy(set => set.Taster).ToDictionary();
        TasterResult[] counted = [.. scored.PerTaster.Where(taster => taster.Counted > 0)];
        return new(scored.TasterCounts())
        {
            Missing = missing.Count == 0 ? [] :
            [
                .. counted.Select(taster => missing.GetValueOrDefault(taster.Taster)),
                .. missing.Where(one => !counted.Any(taster => taster.Taster == one.Key)).Select(one => one.Value),
            ],
            OtherCounts = [.. Otherwise(scored.Rules)
                .Select(other => new OtherCount(other.Rule,
                    scored.Plan.Score(scored.Ballots.Select(ballot => ballot.Ballot), other.Rules).TasterCounts()))
                .Where(other => other.Tasters.Count > 0 && !other.Tasters.SequenceEqual(scored.TasterCounts()))],
        };
    }

    /// <summary>Every other rule for doubtful ballots, one at a time.</summary>
    private static IEnumerable<(string Rule, BallotRules Rules)> Otherwise(BallotRules rules)
    {
        foreach (var rule in Enum.GetValues<DuplicateRule>().Where(rule => rule != rules.Duplicates))
        {
            yield return (rule switch { DuplicateRule.First => "the first of double ballots counted",
                DuplicateRule.Last => "the last of double ballots counted",
                _ => "unlike double ballots left out" }, rules with { Duplicates = rule });
        }

        foreach (var rule in Others(rules.Late)) yield return ($"late ballots {Done(rule)}", rules with { Late = rule });
        foreach (var rule in Others(rules.KnewVariable))
            yield return ($"ballots of tasters who knew the variable {Done(rule)}", rules with { KnewVariable = rule });
        foreach (var rule in Others(rules.Brewer)) yield return ($"the brewer's ballots {Done(rule)}", rules with { Brewer = rule });
        foreach (var rule in Others(rules.NoUsableAnswer).Where(rule => rule != BallotRule.Count))
            yield return ($"ballots without a usable answer {Done(rule)}", rules with { NoUsableAnswer = rule });
        if (rules.Missing == BallotRule.CountAsWrong)
            yield return ("missing ballots left out", rules with { Missing = BallotRule.Exclude });
    }

    private static IEnumerable<BallotRule> Others(BallotRule rule) => Enum.GetValues<BallotRule>().Where(other => other != rule);

    private static string Done(BallotRule rule) =>
        rule switch { BallotRule.Exclude => "left out", BallotRule.Count => "counted", _ => "counted as wrong" };
}
