using System.Globalization;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>How a trial's plan stands: its seals, what happened to its panels, and what trial.json says now.</summary>
/// <param name="Chain">The seals.</param>
/// <param name="Events">What happened to the panels, in the order of the log.</param>
/// <param name="Now">The plan as trial.json has it now.</param>
public sealed record PlanState(SealChain Chain, IReadOnlyList<PanelEvent> Events, TrialPlan Now)
{
    /// <summary>Where the author says that the fingerprint was published; null where nothing is said.</summary>
    public string? Published { get; init; }

    /// <summary>Where the author says that the result was published; null where nothing is said.</summary>
    public string? Reported { get; init; }

    /// <summary>What trusted clocks say of the seals.</summary>
    public IReadOnlyList<Timestamp> Timestamps { get; init; } = [];

    /// <summary>In what trial.json differs from the newest seal; empty where the trial is not sealed.</summary>
    public IReadOnlyList<PlanDifference> Unrecorded => Chain.Latest is { } latest ? PlanDifference.Between(latest.Plan, Now) : [];

    /// <summary>The events of a panel.</summary>
    public IEnumerable<PanelEvent> Of(string panel, PanelEventKind kind) =>
        Events.Where(one => one.Kind == kind && string.Equals(one.Panel, panel, StringComparison.OrdinalIgnoreCase));

    /// <summary>How one panel's plan was kept.</summary>
    /// <param name="panel">The panel's name.</param>
    /// <param name="history">What became of its plan.</param>
    /// <param name="key">The fingerprint of the key that lies in the folder; null where none does.</param>
    internal PlanCustody CustodyOf(string panel, PanelHistory history, Func<Fingerprint?> key)
    {
        if (history.InForce is not { } seal) return PlanCustody.NotSealed;
        var closed = Of(panel, PanelEventKind.Closed).FirstOrDefault();
        return new PlanCustody
        {
            Seal = seal.File,
            Fingerprint = seal.Fingerprint?.Spoken,
            Digits = seal.Fingerprint?.Digits,
            SealedAt = seal.At,
            Published = Published,
            Timestamp =
                Timestamps.FirstOrDefault(
                    stamp => Path.GetFileNameWithoutExtension(stamp.File) == Path.GetFileNameWithoutExtension(seal.File))?.Says,
            Amendments = history.Amendments,
            Changes = history.Changes,
            ChangedPlan = history.Changed,
            Breaks = [.. Chain.Breaks, .. KeyBreaks(panel, key)],
            Looks = [.. Of(panel, PanelEventKind.Looked).Select(Look)],
            Closed = closed?.Day,
            BallotsAtClose = closed?.Ballots,
        };
    }

    private IEnumerable<string> KeyBreaks(string panel, Func<Fingerprint?> key)
    {
        if (Of(panel, PanelEventKind.Served).FirstOrDefault() is not { } served) yield break;
        if (served.Key is { } drawn && key() is { } found && found != drawn)
        {
            yield return $"The key of panel {panel} is not the one that was drawn: its fingerprint is {found}, and "
                + $"{PanelEvent.Log.FileName} holds {drawn}.";
        }

        if (served.Seal is { } under && Chain.Seals.All(seal => seal.Fingerprint != under))
        {
            yield return $"Panel {panel} was served under a seal with the fingerprint {under}, and no seal in this folder has it.";
        }
    }

    private static string Look(PanelEvent look) => string.Create(CultureInfo.InvariantCulture,
        $"{(look.Who.Length > 0 ? look.Who : "somebody")} looked on "
            + $"{SealText.Moment(look.When)}"
            + $"{(look.Ballots is { } ballots ? $", with {ballots} {(ballots == 1 ? "ballot" : "ballots")} in" : "")}, because: "
            + $"{look.Because}");
}
