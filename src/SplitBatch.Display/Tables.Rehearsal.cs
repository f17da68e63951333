using SplitBatch.Panel;

namespace SplitBatch.Display;

/// <content>Plans tried before pouring.</content>
public static partial class Tables
{
    /// <summary>How often simulated panels give each answer, one row for each kind of tasters.</summary>
    /// <param name="rehearsals">The rehearsals.</param>
    public static Table Rehearsals(IEnumerable<Rehearsal> rehearsals) => Table.Of(rehearsals, "How often the plan would give each answer, if")
        .Text("tasters", r => r.Simulated.Model.ToString())
        .Percent("shows a difference", r => r.ShowingADifference)
        .Percent("of these: but a small one", r => r.Shares[PanelAnswer.DifferenceWithinMargin])
        .Percent("rules the margin out", r => r.Shares[PanelAnswer.MarginRuledOut])
        .Percent("settles nothing", r => r.Shares[PanelAnswer.Inconclusive])
        .ToTable();
}
