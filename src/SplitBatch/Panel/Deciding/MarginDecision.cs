using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Panel.Deciding;

/// <summary>Is a difference as large as the margin ruled out, and what is still allowed?</summary>
/// <param name="RuledOut">Whether it is.</param>
/// <param name="Basis">How that was decided.</param>
/// <param name="Range">The counts that would rule it out by all that counts here but the control; null where none would.</param>
/// <param name="PValue">The chance of so few right answers if the margin were true, by a panel read once; with repeats, the larger one of
/// the spreads of ability that are tried. Null where the protocol cannot be asked.</param>
/// <param name="PValueReversed">The same for a difference the other way round; null for a task without a direction.</param>
/// <param name="StillAllowed">The largest share of tasters who can tell, in this task, that is still allowed at level 1 - beta; null
/// where no limit is stated.</param>
/// <param name="StillAllowedDPrime">The same as d-prime, if tasters are alike.</param>
/// <param name="StillAllowedReversed">The largest share who find the beers the other way round; null for a task without a direction, and
/// after early looks.</param>
/// <param name="Obstacles">What stood in the way, where it is not ruled out.</param>
public sealed record MarginDecision(
    bool RuledOut, DecisionBasis Basis, CountRange? Range, double? PValue, double? PValueReversed,
    double? StillAllowed, double? StillAllowedDPrime, double? StillAllowedReversed, Obstacles Obstacles)
{
    /// <summary>The answer of a protocol that cannot be asked.</summary>
    internal static MarginDecision NotAskable { get; } =
        new(false, DecisionBasis.Count, null, null, null, null, null, null, Obstacles.Protocol);

    internal static MarginDecision Of(PanelRules rules, PanelResult result, bool alarm)
    {
        var (protocol, margin, beta, sets, right) = (rules.Protocol, rules.Margin, rules.Beta, result.Sets, result.Right);
        var people = result.HasRepeats ? new PeopleRule(rules.Protocol, rules.Margin, rules.Beta, result.Tasters) : null;
        var looks = LookRule.Of(rules, result);
        var plain = MarginCounts.RuledOut(protocol, sets, margin, beta);
        var byLooks = ByLooks(rules, sets, looks, plain, people is not null);
        var range = people is null ? byLooks : people.Range is { } own ? byLooks?.And(own) : null;
        var why = Why();
        var basis = people is not null
            ? DecisionBasis.People
            : looks.IsAnyTime ? DecisionBasis.AnyTime : looks.Looks is null ? DecisionBasis.Count : DecisionBasis.PlannedLooks;
        var looked = looks.IsAnyTime || looks.Looks is not null;
        double? allowed = people is not null ? looked ? null : people.StillAllowed
            : looked ? AnyTime.Limit(protocol, sets, right, beta) : CountLimit.Discriminators(protocol, sets, right, beta);
        return new(
            why == Obstacles.None, basis, range,
            people?.PValue ?? MarginCounts.PValue(protocol, sets, right, margin),
            people is null ? MarginCounts.PValueReversed(protocol, sets, right, margin) : people.PValueReversed,
            allowed, allowed is { } share ? protocol.DPrime(protocol.CorrectFromDiscriminators(share)) : null,
            people is null && !looked ? CountLimit.DiscriminatorsReversed(protocol, sets, right, beta) : null, why);

        Obstacles Why()
        {
            var found = alarm ? Obstacles.Alarm : Obstacles.None;
            var wouldDo = plain?.Contains(right) == true;
            if (plain is null) found |= Obstacles.Size;
            else if (!wouldDo) found |= Obstacles.Count;
            if (plain is not null && people is not null && (people.Range is null || (wouldDo && !people.Allows(right))))
                found |= Obstacles.People;
            if (wouldDo && byLooks?.Contains(right) != true) found |= Obstacles.Looks;
            if ((rules.ControlDeclared || result.Control is not null) && result.Control?.Passed != true) found |= Obstacles.Control;
            return found;
        }
    }

    private static CountRange? ByLooks(PanelRules rules, int sets, LookRule looks, CountRange? plain, bool repeats)
    {
        if (looks is { IsAnyTime: false, Looks: null }) return plain;
        if (repeats) return null; // No rule is known for a margin, repeats and looks together.
        var atLook = looks.IsAnyTime
            ? AnyTime.RuledOut(rules.Protocol, sets, rules.Margin, rules.Beta)
            : LooksMargin.Of(rules.Protocol, rules.Margin, rules.Beta, looks.Looks!) is var all
                ? all.Ranges[all.Looks.ToList().IndexOf(sets)]
                : null;
        return plain is { } once ? atLook?.And(once) : null;
    }
}
