namespace SplitBatch.Trials.Seals;

/// <summary>One entry in which two states of a plan differ.</summary>
/// <param name="Entry">The entry's name, as trial.json has it: <c>margin</c>, <c>rules.late</c>, <c>beers.A</c>.</param>
/// <param name="Panel">The panel whose entry it is; null for one of the whole trial.</param>
/// <param name="Before">What was fixed; null where nothing was.</param>
/// <param name="After">What stands there later; null where nothing does.</param>
public sealed record PlanDifference(string Entry, string? Panel, string? Before, string? After)
{
    /// <summary>For example <c>margin of panel main</c>.</summary>
    public string Name => Panel is null ? Entry : $"{Entry} of panel {Panel}";

    /// <summary>
    /// Whether this only says of the lab what nobody had said before. A lab often states its precision with the return, so that is no
    /// departure of a panel; the lab's own result then rests on what was not sealed.
    /// </summary>
    public bool IsSaidLater => string.IsNullOrEmpty(Before) && Entry.StartsWith("lab.", StringComparison.Ordinal);

    /// <summary>For example <c>margin of panel main: 0.25 was sealed, 0.3 stands there now</c>.</summary>
    public override string ToString() => $"{Name}: {Shown(Before)} was sealed, {Shown(After)} stands there now";

    /// <summary>Every entry in which a later state differs from an earlier one, in the order of the earlier.</summary>
    public static IReadOnlyList<PlanDifference> Between(TrialPlan before, TrialPlan after)
    {
        var (old, now) = (PlanEntry.Of(before), PlanEntry.Of(after));
        var places = old.Concat(now).Select(entry => (entry.Name, entry.Panel)).Distinct();
        return
        [
            .. from place in places
               let was = old.FirstOrDefault(entry => entry.IsAt(place.Name, place.Panel))?.Value
               let stands = now.FirstOrDefault(entry => entry.IsAt(place.Name, place.Panel))?.Value
               where (was ?? "") != (stands ?? "") && !PanelIsGone(place)
               select new PlanDifference(place.Name, place.Panel, was, stands),
        ];

        // Of a panel that only one of the two plans knows, the panel itself is the difference, and not each of its entries.
        bool PanelIsGone((string Name, string? Panel) place) =>
            place.Panel is { } panel && place.Name != PlanEntry.ThePanel && (before.Panel(panel) is null || after.Panel(panel) is null);
    }

    /// <summary>Whether this touches what a panel's result says: an entry of that panel, or of the whole trial.</summary>
    public bool Concerns(string panel) =>
        !IsSaidLater && (Panel is null || string.Equals(Panel, panel, StringComparison.OrdinalIgnoreCase));

    private static string Shown(string? value) => value switch
    {
        null or "" => "nothing",
        _ => value,
    };
}
