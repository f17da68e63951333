using System.ComponentModel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of whether something but the beers drove the answers.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class BiasTables
{
    /// <summary>Every bias check of a panel.</summary>
    /// <param name="report">The checks.</param>
    public static Table Table(this BiasReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Table(report.Checks);
    }

    /// <summary>Bias checks, group by group.</summary>
    /// <param name="checks">The checks.</param>
    public static Table Table(this IEnumerable<BiasCheck> checks) => TableOf.Each(
        checks.SelectMany(check => check.Groups.Select((group, i) => (Check: check, Group: group, IsFirst: i == 0))),
        "Did anything but the beers drive the answers?")
        .Text("grouped by", r => r.IsFirst ? r.Check.Name : "")
        .Text("counted", r => r.IsFirst ? r.Check.Kind == BiasKind.RightAnswers ? "right answers" : "wrong picks" : "")
        .Text("group", r => r.Group.Label)
        .Number("count", r => r.Group.Count, decimals: 0)
        .Number("of", r => r.Group.Sets, decimals: 0)
        .Number("expected", r => r.Group.Expected)
        .Number("p-value", r => r.IsFirst ? r.Check.PValue : null, decimals: 3)
        .Number("corrected for all checks", r => r.IsFirst ? r.Check.AdjustedPValue : null, decimals: 3)
        .Note("No bias shown does not rule one out in a panel of this size.")
        .ToTable();
}
