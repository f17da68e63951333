using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Few people with many sets: a margin ruled out that is true, and limits that miss.</summary>
internal static class FewPeopleRates
{
    private static readonly (int People, int Sets, double Margin, double Beta)[] Panels =
    [
        (1, 60, 0.3, 0.10), (2, 30, 0.3, 0.10), (4, 15, 0.3, 0.10), (6, 10, 0.3, 0.10), (6, 10, 0.3, 0.05), (8, 4, 0.5, 0.05),
        (9, 6, 0.3, 0.05),
        (12, 5, 0.3, 0.05), (14, 8, 0.2, 0.05), (20, 3, 0.3, 0.05), (30, 2, 0.4, 0.05),
    ];

    public static RateTable Table { get; } = new(
        "Few people, many sets",
        "People with several triangles or directed pairs each, whose mean ability is the margin, however it is spread over them. "
            + "Promised: the margin is ruled out no more often than beta, and from six people on the limit holds as often as it says. "
            + "\"As tasters\" is the habit of counting every set as a new taster.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var protocol in new[] { Protocol.Triangle, Protocol.PairedDirectional })
        foreach (var panel in Panels)
        {
            var rules = new PanelRules(protocol, DeclaredMargin.OfShare(panel.Margin)) { Beta = panel.Beta };
            var decided = Draw.Once(right => PanelDecision.Of(rules, Result(panel.People, panel.Sets, right)).Margin);
            var plain = Draw.Once(right => PanelDecision.Of(rules, PanelResult.Of(panel.People * panel.Sets, right)).Margin.RuledOut);
            foreach (var spread in Spread.All)
            {
                var (random, ruledOut, asTasters, short_) = (Draw.Source(seed, row++), 0, 0, 0);
                for (var run = 0; run < runs; run++)
                {
                    var right = Enumerable.Range(0, panel.People)
                        .Sum(_ => random.Right(panel.Sets, protocol.Chance, spread.Ability(random, panel.Margin)));
                    if (decided(right).RuledOut) ruledOut++;
                    if (plain(right)) asTasters++;
                    if (decided(right).StillAllowed < panel.Margin - 1e-12) short_++;
                }

                var setting = $"{panel.People} people x {panel.Sets} ({protocol.Name}), {panel.Margin:P0} can tell, {spread.Name}";
                yield return new(setting, $"{panel.Margin:P0} is ruled out", panel.Beta, ruledOut, runs);
                if (panel.People >= PeopleMargin.FewestForLimit)
                    yield return new(setting, "the limit lies below the truth", panel.Beta, short_, runs);
                if (spread == Spread.AllOrNothing)
                    yield return new(setting, $"{panel.Margin:P0} is ruled out, as tasters", null, asTasters, runs);
            }
        }
    }

    /// <summary>A panel with so many right answers in all; who gave them decides nothing here.</summary>
    private static PanelResult Result(int people, int sets, int right) => new(Enumerable.Range(0, people).Select(_ =>
    {
        var given = Math.Min(sets, right);
        right -= given;
        return new TasterCount(sets, given);
    }));
}
