using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using static System.FormattableString;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// How a sealed panel ended: with the ballots that were sealed, with fewer, with more, or with some after the close; and what that does to
/// its result.
/// </summary>
internal static class PanelEnding
{
    private const string Lead = "so the result is a lead to follow and not a test";

    /// <summary>The departures, none where the panel ended as it was sealed. A sequential plan says itself when to stop.</summary>
    public static IEnumerable<Departure> Departures(PanelPlan plan, CountedBallots counted)
    {
        if (counted.Late > 0)
        {
            var late = $"They came in when the count could be known and are not counted; {Lead}.";
            yield return new("close", "no ballot after it", Ballots(counted.Late), late, Severity.Error)
            {
                Kind = DepartureKind.AfterTheClose,
            };
        }

        if (counted.Extra > 0)
        {
            var came = Whole(plan.Sets + counted.Extra);
            var many = Invariant($"More came in than were sealed. The first {plan.Sets} decide; more ballots until the count pleases ")
                + Invariant($"show what is not there, {Lead}.");
            yield return new("ballots", Whole(plan.Sets), came, many, Severity.Error) { Kind = DepartureKind.TooMany };
        }

        var missing = Missing(plan, counted.Panel);
        if (plan.Stopping != StoppingRule.Fixed || missing == 0) yield break;
        yield return StandsWhateverIsMissing(plan, counted.Panel, missing)
            ? Fewer("Fewer came in than were sealed, and whatever the missing ones had answered, the result would be the same.",
                Severity.Warning)
            : Fewer($"The panel ended early.{Price(plan)} Nobody can tell from outside why it ended, {Lead}.", Severity.Error) with
            {
                Kind = DepartureKind.EndedEarly,
                FalselyShown = FalselyShown(plan),
            };

        Departure Fewer(string meaning, Severity severity) =>
            new("ballots", Whole(plan.Sets), Whole(plan.Sets - missing), meaning, severity) { Kind = DepartureKind.FewerBallots };
    }

    /// <summary>Sets that were sealed and gave no ballot.</summary>
    public static int Missing(PanelPlan plan, ScoredPanel panel) => Math.Max(0, plan.Sets - (panel.Served - panel.Missing.Count));

    /// <summary>
    /// Whether every number of right answers among the missing gives the same answer as the count; then it does not matter why they are
    /// missing.
    /// </summary>
    private static bool StandsWhateverIsMissing(PanelPlan plan, ScoredPanel panel, int missing)
    {
        var answered = panel.Ballots.Count(ballot => ballot.IsCounted);
        if (!plan.Protocol.HasKnownChance || plan.Replicates > 1 || answered == 0) return false;
        var rules = PanelRules.Of(plan);
        var answer = PanelDecision.Of(rules, PanelResult.Of(panel.Counted, panel.Correct)).Answer;
        return PanelDecision.Of(rules, PanelResult.Of(answered, panel.Correct, missing)).Ballots!.IfRight.All(other => other == answer);
    }

    private static double? FalselyShown(PanelPlan plan) =>
        plan.Protocol.HasKnownChance && plan.Replicates == 1
            ? EarlyLooks.At(plan.Protocol, plan.Alpha, [.. Enumerable.Range(1, plan.Tasters)]).TrueAlpha
            : null;

    private static string Price(PanelPlan plan) => FalselyShown(plan) is { } price
        ? Invariant($" Whoever knows the count after each ballot and stops at the first difference finds a false one in ")
            + Invariant($"{Printed.Percent(price)} of panels, and not in {Printed.ChosenPercent(plan.Alpha)}.")
        : "";

    private static string Ballots(int number) => number == 1 ? "1 ballot" : $"{Whole(number)} ballots";

    private static string Whole(int number) => Invariant($"{number}");
}
