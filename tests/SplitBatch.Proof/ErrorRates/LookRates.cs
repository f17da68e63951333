using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Panels that are looked at before their end and stopped where somebody likes what he sees.</summary>
internal static class LookRates
{
    public static RateTable Table { get; } = new(
        "Looking early",
        "One set for each taster. The count is looked at after every ballot, or at planned looks, and the panel is stopped at the first "
            + "look that gives the claim. Promised: with the rule for unplanned looks, and with the level for planned ones, a false "
            + "difference in at most 5 of 100 and the margin falsely ruled out in at most 5 of 100. \"As if read once\" is what the "
            + "habit costs.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var protocol in new[] { Protocol.Triangle, Protocol.DuoTrio, Protocol.ThreeAfc, Protocol.PairedTwoSided })
        foreach (var tasters in new[] { 24, 60, 96 })
        {
            int[] every = [.. Enumerable.Range(1, tasters)];
            int[] four = [tasters / 4, tasters / 2, 3 * tasters / 4, tasters];
            var margin = DeclaredMargin.OfShare(0.3);
            var rules = new PanelRules(protocol, margin);
            foreach (var (name, looks, declared, looked) in new[]
            {
                ("after every ballot, not planned", every, rules, true),
                ("at four planned looks", four, rules with { PlannedLooks = four }, false),
            })
            {
                var decided =
                    Draw.Once(key => PanelDecision.Of(declared, PanelResult.Of(key / 1000, key % 1000) with { LookedEarly = looked }));
                var once = Draw.Once(key => PanelDecision.Of(rules, PanelResult.Of(key / 1000, key % 1000)));
                foreach (var (truth, share, claim, asks) in new (string, double, string, Func<PanelDecision, bool>)[]
                {
                    ("all guess", protocol.Chance, "a difference", found => found.Difference.Shown),
                    ("30 % can tell", margin.CorrectIn(protocol), "30 % is ruled out", found => found.Margin.RuledOut),
                })
                {
                    var random = Draw.Source(seed, row++);
                    var (said, naive) = (0, 0);
                    for (var run = 0; run < runs; run++)
                    {
                        var (right, next, saidHere, naiveHere) = (0, 0, false, false);
                        for (var n = 1; n <= tasters && !(saidHere && naiveHere); n++)
                        {
                            right += random.Successes(1, share);
                            if (looks[next] != n) continue;
                            next++;
                            saidHere |= asks(decided((n * 1000) + right));
                            naiveHere |= asks(once((n * 1000) + right));
                        }

                        if (saidHere) said++;
                        if (naiveHere) naive++;
                    }

                    yield return new($"{tasters} tasters ({protocol.Name}), {truth}, looked at {name}", claim, 0.05, said, runs);
                    yield return new($"{tasters} tasters ({protocol.Name}), {truth}, looked at {name}", $"{claim}, as if read once", null,
                        naive, runs);
                }
            }
        }
    }
}
