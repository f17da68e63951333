using static System.FormattableString;

namespace SplitBatch.Panel;

/// <summary>A plan tried before anything is poured: how often simulated panels would give each of the four answers.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Simulated">The simulated panels, with what their tasters were like.</param>
/// <param name="Shares">The share of panels with each answer; the four add up to one, less the panels that nobody came to.</param>
public sealed record Rehearsal(PanelPlan Plan, SimulatedPanels Simulated, IReadOnlyDictionary<PanelAnswer, double> Shares)
{
    /// <summary>The share of panels that show a difference, be it large or small.</summary>
    public double ShowingADifference => Shares[PanelAnswer.DifferenceShown] + Shares[PanelAnswer.DifferenceWithinMargin];

    /// <summary>For example <c>If everyone has d-prime 1: 54 % of panels show a difference, 10 % rule the margin out without one, 36 % settle nothing (10,000 panels, seed 1).</c></summary>
    public override string ToString() => Invariant(
        $"If {Simulated.Model}: {Counts.Percent(ShowingADifference)} of panels show a difference, {Counts.Percent(Shares[PanelAnswer.MarginRuledOut])} rule the margin out without one, {Counts.Percent(Shares[PanelAnswer.Inconclusive])} settle nothing ({Simulated.Panels:N0} panels, seed {Simulated.Seed}).");
}
