using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials.Checks;

/// <summary>A plan that reads otherwise than it was sealed: to be amended before the first ballot, and a departure after it.</summary>
internal sealed class PlanDiffersFromSeal : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var state = facts.Content.State;
        if (state.Chain.Latest is not { } seal) yield break;
        foreach (var difference in state.Unrecorded)
        {
            var late = facts.Content.Panels.Where(panel => panel.Ballots.Count > 0 && difference.Concerns(panel.Name))
                .Select(panel => panel.Name).ToList();
            yield return new Fault(TrialFolder.DescriptionFile, $"{Told(difference, seal)} {Means(difference, late)}")
            {
                Column = difference.Panel is null ? difference.Entry : $"panels.{difference.Panel}.{difference.Entry}",
                Value = difference.After,
                Accepted = difference.Before is { Length: > 0 } before ? before : null,
                Suggestion = difference.IsSaidLater || late.Count > 0
                    ? null
                    : "Put it back, or put the change on record: splitbatch amend, with --because.",
                Severity = Severity.Warning,
            };
        }
    }

    private static string Told(PlanDifference difference, Seal seal) =>
        $"{char.ToUpperInvariant(difference.Name[0])}{difference.Name[1..]}: {Shown(difference.Before)} in the seal ({seal.File}), "
            + $"{Shown(difference.After)} here.";

    private static string Means(PlanDifference difference, List<string> late) => difference.IsSaidLater
        ? "It was said only after the plan was sealed, so what the lab's difference means was not fixed beforehand."
        : late.Count > 0
        ? $"Ballots of panel {string.Join(" and ", late)} are in, so this is a departure: it goes before the result, which is a lead and "
            + $"not a test. The sealed plan decides."
        : "No ballot is in yet, so it can still be amended.";

    private static string Shown(string? value) => string.IsNullOrEmpty(value) ? "nothing" : value;
}

/// <summary>
/// What was done to a sealed plan and cannot be undone: changes after the first ballot that were put on record, early looks, seals and
/// keys that do not fit.
/// </summary>
internal sealed class PlanHistoryTold : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var problem in facts.Content.State.Chain.Breaks) yield return Warn(SealText.NameOf(1), problem);
        foreach (var panel in facts.Content.Panels)
        {
            foreach (var problem in panel.Custody.Breaks.Except(facts.Content.State.Chain.Breaks))
                yield return Warn(PanelEvent.Log.FileName, problem);
            foreach (var change in panel.Custody.Changes.Where(change => change.When is not null))
            {
                yield return Warn(TrialFolder.DescriptionFile,
                    $"Somebody changed {change.What} from {change.From} to {change.To} after the first ballot, {change.WhenAndWhy}. "
                        + "This departure goes before the result, which is a lead and not a test. The sealed plan decides.");
            }

            foreach (var look in panel.Custody.Looks)
                yield return Warn(PanelEvent.Log.FileName,
                    $"Panel {panel.Name}: {look}. This departure goes before the result, which is a lead and not a test.");
        }

        Fault Warn(string file, string problem) => new(file, problem) { Severity = Severity.Warning };
    }
}

/// <summary>A sealed panel that ended otherwise than it was sealed.</summary>
internal sealed class EndedOtherwise : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from panel in facts.Content.Panels
        where panel.Custody.IsSealed && panel.HasCount
        from departure in panel.Departures
        where departure.What is "ballots" or "close"
        select new Fault(panel.BallotFiles.Count > 0 ? panel.BallotFiles[0] : $"ballots-{panel.Name}.csv",
            $"Panel {panel.Name}, {departure}") { Severity = Severity.Warning };
}
