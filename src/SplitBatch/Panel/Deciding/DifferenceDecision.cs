using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Panel.Deciding;

/// <summary>How a question is decided.</summary>
public enum DecisionBasis
{
    /// <summary>The exact binomial on the count, read once.</summary>
    Count,

    /// <summary>By people: how each leans, or who can always tell and who guesses.</summary>
    People,

    /// <summary>The count at a planned look, at the level that all looks share.</summary>
    PlannedLooks,

    /// <summary>The rule that holds however often the count was seen.</summary>
    AnyTime,

    /// <summary>Fisher's exact test of answers to two kinds of cup.</summary>
    TwoKinds,
}

/// <summary>Is a difference shown?</summary>
/// <param name="Shown">Whether it is.</param>
/// <param name="Basis">How that was decided.</param>
/// <param name="PValue">The chance of such a count, or a more telling one, by guessing alone; after unplanned looks the bound that holds
/// at any look.</param>
/// <param name="Level">What <paramref name="PValue"/> has to reach.</param>
/// <param name="CriticalCount">The smallest count that shows a difference (for a two-sided pair, of the more frequent answer); null where
/// none does or no count decides.</param>
/// <param name="Obstacles">What stood in the way, where none is shown.</param>
public sealed record DifferenceDecision(
    bool Shown, DecisionBasis Basis, double PValue, double Level, int? CriticalCount, Obstacles Obstacles)
{
    internal static DifferenceDecision Of(PanelRules rules, PanelResult result)
    {
        var (protocol, sets, right) = (rules.Protocol, result.Sets, result.Right);
        var count = protocol.Sides == 1 ? right : Math.Max(right, sets - right);
        if (protocol.Sides == 2 && result.HasRepeats) return ByLeanings(rules, result);
        var plain = Power.CriticalCount(protocol, sets, rules.Alpha);
        var tail = Math.Min(1, protocol.Sides * ExactBinomial.AtLeast(count, sets, protocol.Chance));
        var (basis, critical, p, level) = LookRule.Of(rules, result) switch
        {
            { IsAnyTime: true } => (DecisionBasis.AnyTime, AnyTime.DifferenceCount(protocol, sets, rules.Alpha),
                Math.Min(1, 1 / AnyTime.Factor(protocol, sets, right)), rules.Alpha),
            { Looks: { } looks } => Planned(LooksLevel.Of(protocol, rules.Alpha, looks)),
            _ => (DecisionBasis.Count, plain, tail, rules.Alpha),
        };
        return new(count >= critical, basis, p, level, critical, Why());

        (DecisionBasis, int?, double, double) Planned(LooksLevel looks) =>
            (DecisionBasis.PlannedLooks, looks.CriticalCounts[looks.Looks.ToList().IndexOf(sets)], tail, looks.Level);

        Obstacles Why() => count >= critical ? Obstacles.None
            : count >= plain ? Obstacles.Looks
            : plain is null ? Obstacles.Size
            : Obstacles.Count;
    }

    // Repeats of a two-sided pair: people may lean to different beers, and one person's repeats lean together. No rule is known for looks
    // here.
    private static DifferenceDecision ByLeanings(PanelRules rules, PanelResult result)
    {
        var leanings = new Leanings(result.Tasters);
        var p = leanings.PValue;
        var reached = ExactBinomial.Reaches(p, rules.Alpha);
        var looked = LookRule.Of(rules, result) is not { IsAnyTime: false, Looks: null };
        var why = !reached ? leanings.SmallestPValue > rules.Alpha ? Obstacles.Size : Obstacles.Count
            : looked ? Obstacles.Looks : Obstacles.None;
        return new(reached && !looked, DecisionBasis.People, p, rules.Alpha, null, why);
    }
}
