using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Directed tasks whose beers stand the other way round, and alarms over nothing.</summary>
internal static class SwappedRates
{
    public static RateTable Table { get; } = new(
        "Opposite answers",
        "One set for each taster. The beers are swapped, or the key turned: who can tell names the other beer. Promised: a difference as "
            + "large as the margin is ruled out no more often than beta (5 %) also this way round, none is shown in the expected "
            + "direction, and where all guess the alarm is raised in at most 1 of 100. \"Alarm raised\" without a promise says how often "
            + "the swap is found.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var protocol in new[] { Protocol.PairedDirectional, Protocol.ThreeAfc })
        foreach (var tasters in new[] { 12, 24, 60, 96 })
        {
            var margins = new[] { DeclaredMargin.OfShare(0.3), DeclaredMargin.OfDPrime(1) };
            foreach (var margin in margins)
            {
                var rules = new PanelRules(protocol, margin);
                var decided = Draw.Once(right => PanelDecision.Of(rules, PanelResult.Of(tasters, right)));
                foreach (var (name, share) in new[] { ("at the margin", margin.CorrectReversedIn(protocol)),
                    ("d-prime 1", protocol.CorrectShareReversed(1)) })
                {
                    if (margin.IsDPrime && name == "d-prime 1") continue; // That is the margin.
                    var random = Draw.Source(seed, row++);
                    int ruledOut = 0, shown = 0, alarm = 0;
                    for (var run = 0; run < runs; run++)
                    {
                        var found = decided(random.Successes(tasters, share));
                        if (found.Answer is PanelAnswer.MarginRuledOut or PanelAnswer.DifferenceWithinMargin) ruledOut++;
                        if (found.Answer is PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin) shown++;
                        if (found.Answer == PanelAnswer.Alarm) alarm++;
                    }

                    var setting = $"{tasters} tasters ({protocol.Name}), swapped, {name}, margin {margin}";
                    yield return new(setting, "the margin is ruled out", 0.05, ruledOut, runs);
                    yield return new(setting, "a difference in the expected direction is shown", 0.05, shown, runs);
                    yield return new(setting, "alarm raised", null, alarm, runs);
                }
            }
        }

        foreach (var protocol in Protocol.All.Where(p => p is { HasKnownChance: true, Sides: 1 }))
        foreach (var tasters in new[] { 12, 24, 60 })
        {
            var random = Draw.Source(seed, row++);
            var raised = Draw.Once(right => LowCountAlarm.Of(protocol, tasters, right).IsRaised);
            yield return new($"{tasters} tasters ({protocol.Name}), all guess", "alarm raised", LowCountAlarm.DefaultLevel,
                Draw.Count(runs, () => raised(random.Successes(tasters, protocol.Chance))), runs);
        }
    }
}
