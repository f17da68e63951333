using static System.FormattableString;

namespace SplitBatch.Trials;

/// <summary>The count of a panel as somebody saw it before the close.</summary>
/// <param name="Panel">The panel's name.</param>
/// <param name="Counted">Answers counted so far.</param>
/// <param name="Correct">Right answers among them.</param>
/// <param name="IsKept">Whether the look is kept as a departure; not where the panel was over.</param>
public sealed record EarlyCount(string Panel, int Counted, int Correct, bool IsKept)
{
    /// <summary>The count, and that it was looked at.</summary>
    public override string ToString() => Invariant($"{Correct} right of {Counted} so far in panel {Panel}.")
        + (IsKept ? " That the count was looked at is kept in panel-log.csv, and will stand before the result." : "");
}
