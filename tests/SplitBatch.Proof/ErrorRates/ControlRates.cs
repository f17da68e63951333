using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Panels with a control whose difference is known.</summary>
internal static class ControlRates
{
    private const int Tasters = 60;

    public static RateTable Table { get; } = new(
        "A control of known difference",
        "60 tasters, one set of the halves and one control set each. Promised: with the control declared, a panel that cannot tell "
            + "anything rules a margin out in at most 5 of 100 (the chance that guessers pass); a true margin is ruled out no more often "
            + "than beta, 5 %; that the halves lie closer than the control is claimed in at most 5 of 100 where they do not. \"Without a "
            + "control\" is what a panel that cannot taste would say.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var protocol in new[] { Protocol.Triangle, Protocol.Tetrad, Protocol.ThreeAfc })
        {
            var rules = new PanelRules(protocol, DeclaredMargin.OfShare(0.3)) { ControlDeclared = true };
            var decided =
                Draw.Once(
                    key => PanelDecision.Of(rules,
                        PanelResult.Of(Tasters, key / 1000) with
                        {
                            Control = KnownControl.Of(protocol, Tasters, key % 1000),
                        }).Margin.RuledOut);
            var without =
                Draw.Once(
                    right => PanelDecision.Of(rules with { ControlDeclared = false }, PanelResult.Of(Tasters, right)).Margin.RuledOut);

            var unable = Draw.Source(seed, row++);
            int said = 0, naive = 0;
            for (var run = 0; run < runs; run++)
            {
                int right = unable.Successes(Tasters, protocol.Chance), control = unable.Successes(Tasters, protocol.Chance);
                if (decided((right * 1000) + control)) said++;
                if (without(right)) naive++;
            }

            yield return new($"{protocol.Name}, a panel that cannot taste", "30 % is ruled out", 0.05, said, runs);
            yield return new($"{protocol.Name}, a panel that cannot taste", "30 % is ruled out, without a control", null, naive, runs);

            foreach (var controlDPrime in new[] { 1.0, 2.0 })
            {
                var random = Draw.Source(seed, row++);
                double atMargin = rules.Margin.CorrectIn(protocol), atControl = protocol.CorrectShare(controlDPrime);
                yield return new($"{protocol.Name}, 30 % can tell, control of d-prime {controlDPrime:0}", "30 % is ruled out", 0.05,
                    Draw.Count(runs, () =>
                        decided((random.Successes(Tasters, atMargin) * 1000) + random.Successes(Tasters, atControl))), runs);

                // As far apart as the control, and tasters unlike: each as good at the one as at the other.
                var alike = Draw.Source(seed, row++);
                yield return new($"{protocol.Name}, halves as far apart as a control of d-prime {controlDPrime:0}, tasters unlike",
                    "the halves lie closer", 0.05, Draw.Count(runs, () =>
                    {
                        int onlyControl = 0, onlyTest = 0;
                        for (var taster = 0; taster < Tasters; taster++)
                        {
                            var share = taster % 3 == 0 ? protocol.Chance : atControl;
                            bool control = alike.NextDouble() < share, test = alike.NextDouble() < share;
                            if (control && !test) onlyControl++;
                            if (test && !control) onlyTest++;
                        }

                        return KnownControl.AgainstTest(onlyControl, onlyTest) <= 0.05;
                    }), runs);
            }
        }
    }
}
