using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using static System.FormattableString;

namespace SplitBatch.Panel.Simulation;

/// <summary>What came of many simulated panels of one size.</summary>
public sealed class SimulatedPanels
{
    internal SimulatedPanels(
        Protocol protocol, int tasters, int replicates, int panels, int seed, SimulatedTasters model,
        IReadOnlyDictionary<(int Counted, int Correct), long> outcomes)
    {
        (Protocol, Tasters, Replicates, Panels, Seed, Model, Outcomes) = (protocol, tasters, replicates, panels, seed, model, outcomes);
        var counts = new long[(tasters * replicates) + 1];
        foreach (var ((counted, correct), times) in outcomes)
        {
            counts[correct] += times;
            Tastings += counted * times;
            Correct += correct * times;
        }
        Counts = counts;
    }

    /// <summary>The protocol.</summary>
    public Protocol Protocol { get; }

    /// <summary>People invited to each panel.</summary>
    public int Tasters { get; }

    /// <summary>Sets for each taster.</summary>
    public int Replicates { get; }

    /// <summary>How many panels.</summary>
    public int Panels { get; }

    /// <summary>The seed.</summary>
    public int Seed { get; }

    /// <summary>What the tasters were like.</summary>
    public SimulatedTasters Model { get; }

    /// <summary>How many panels had 0, 1, 2 ... correct answers.</summary>
    public IReadOnlyList<long> Counts { get; }

    /// <summary>All tastings of all panels; those of people who had left are not in it.</summary>
    public long Tastings { get; }

    /// <summary>All correct answers of all panels.</summary>
    public long Correct { get; }

    /// <summary>How many panels had so many answers, and so many of them right.</summary>
    internal IReadOnlyDictionary<(int Counted, int Correct), long> Outcomes { get; }

    /// <summary>The share of correct answers over all panels.</summary>
    public double CorrectShare => Tastings == 0 ? 0 : (double)Correct / Tastings;

    /// <summary>The mean count of correct answers.</summary>
    public double Mean => (double)Correct / Panels;

    /// <summary>The variance of the count of correct answers; divisor n.</summary>
    public double Variance => Counts.Select((times, k) => times * (k - Mean) * (k - Mean)).Sum() / Panels;

    /// <summary>
    /// The exact chance of each count, where answers do not hang together: one set for each taster, or tasters all alike. Null elsewhere,
    /// and with position bias or people who do not come.
    /// </summary>
    public IReadOnlyList<double>? ExactChances
    {
        get
        {
            if (Model.HasPositionBias || Model.NoShow > 0) return null;
            if (Replicates > 1 && Model is not { DPrime: DPrimeSpread.All, Fatigue: 0, DropOut: 0 }) return null;
            double share = Model.ExpectedCorrect(Protocol);
            return [.. Enumerable.Range(0, Counts.Count).Select(k => ExactBinomial.Exactly(k, Counts.Count - 1, share))];
        }
    }

    /// <summary>The share of panels with exactly so many correct answers.</summary>
    public double Exactly(int correct) => (double)Counts[Guard.InRange(correct, 0, Counts.Count - 1)] / Panels;

    /// <summary>The share of panels with so many correct answers or more.</summary>
    public double AtLeast(int correct)
    {
        Guard.InRange(correct, 0, Counts.Count);
        long sum = 0;
        for (int k = correct; k < Counts.Count; k++) sum += Counts[k];
        return (double)sum / Panels;
    }

    /// <summary>
    /// The share of panels that would have shown a difference, each judged by the answers it had, as if every set had its own taster.
    /// </summary>
    /// <param name="alpha">The chance, fixed beforehand, of showing a difference that is not there.</param>
    /// <exception cref="InvalidOperationException">The protocol has no known guessing chance.</exception>
    public double ShowingADifference(double alpha = 0.05)
    {
        _ = Protocol.Chance;
        Dictionary<int, int?> critical = [];
        long sum = 0;
        foreach (var ((counted, correct), times) in Outcomes)
        {
            if (counted == 0) continue;
            if (!critical.TryGetValue(counted, out int? needed))
                critical[counted] = needed = Power.CriticalCount(Protocol, counted, alpha);
            int judged = Protocol.Sides == 2 ? Math.Max(correct, counted - correct) : correct;
            if (judged >= needed) sum += times;
        }
        return (double)sum / Panels;
    }

    /// <summary>For example <c>10,000 panels of 20 tasters (triangle, nobody can tell): 6.7 correct on average (seed 1)</c>.</summary>
    public override string ToString() => Invariant(
        $"{Printed.Count(Panels)} panels of {Tasters} tasters{(Replicates > 1 ? Invariant($" with {Replicates} sets each") : "")} ")
            + Invariant($"({Protocol.Name}; {Model}): {Printed.Expected(Mean)} right on average (seed {Seed})");
}

/// <summary>A plan tried before anything is poured: how often simulated panels would give each of the four answers.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Simulated">The simulated panels, with what their tasters were like.</param>
/// <param name="Shares">The share of panels with each answer; the four add up to one, less the panels that nobody came to.</param>
public sealed record Rehearsal(PanelPlan Plan, SimulatedPanels Simulated, IReadOnlyDictionary<PanelAnswer, double> Shares)
{
    /// <summary>The share of panels that show a difference, be it large or small.</summary>
    public double ShowingADifference => Shares[PanelAnswer.DifferenceShown] + Shares[PanelAnswer.DifferenceWithinMargin];

    /// <summary>
    /// For example <c>If everyone has d-prime 1: 54 % of panels show a difference, 10 % rule the margin out without one, 36 % settle
    /// nothing (10,000 panels, seed 1).</c>
    /// </summary>
    public override string ToString() => Invariant(
        $"If {Simulated.Model}: {Printed.Percent(ShowingADifference)} of panels show a difference, ")
            + Invariant($"{Printed.Percent(Shares[PanelAnswer.MarginRuledOut])} rule the margin out without one, ")
            + Invariant($"{Printed.Percent(Shares[PanelAnswer.Inconclusive])} settle nothing ({Printed.Count(Simulated.Panels)} panels, ")
            + Invariant($"seed {Simulated.Seed}).");
}
