using System.Globalization;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Display.Tables;

/// <summary>How the plan was kept: sealed, published, amended, changed.</summary>
public static class SealTables
{
    /// <summary>When each panel's plan was sealed, under which fingerprint, and what was done to it since.</summary>
    /// <param name="trial">The trial.</param>
    public static Table PlanKept(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return TableOf.Each(trial.Panels.SelectMany(panel => Kept(panel).Select(row => (panel.Name, row.What, row.Found))),
            "How the plan was kept")
            .Text("panel", row => row.Name)
            .Text("what", row => row.What)
            .Text("on record", row => row.Found)
            .Note(trial.LatestSeal is null
                ? "Nobody can check that a plan without a seal was fixed beforehand."
                : "The date is that of the author's machine. Only a fingerprint that was published before pouring proves it to a "
                    + "stranger; sha256sum prints the fingerprint of the seal's file on any machine.")
            .ToTable();
    }

    private static IEnumerable<(string What, string Found)> Kept(PanelRecord panel)
    {
        var custody = panel.Custody;
        if (!custody.IsSealed)
        {
            yield return ("sealed", panel.Plan.Declared is { } day
                ? $"not sealed; declared {Day(day)}, by the author's word"
                : "not sealed");
            yield break;
        }

        yield return ("sealed", $"{custody.SealedAt!.Value.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture)} "
            + $"({custody.Seal}), fingerprint {custody.Fingerprint}");
        yield return ("SHA-256", custody.Digits!);
        yield return ("published", custody.Published is { } where
            ? $"by the author's word: {where}"
            : "the author does not say that it was");
        if (custody.Timestamp is { } stamp) yield return ("trusted clock", stamp);
        foreach (var change in custody.Amendments) yield return ("amended before the first ballot", change.ToString());
        foreach (var change in custody.Changes) yield return ("changed after the first ballot", change.ToString());
        foreach (var look in custody.Looks) yield return ("looked at before the close", look);
        foreach (var problem in custody.Breaks) yield return ("does not fit", problem);
        if (custody.Closed is { } closed) yield return ("closed", Day(closed));
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
