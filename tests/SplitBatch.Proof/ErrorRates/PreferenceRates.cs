using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Liking: majorities, beers chosen twice, and choices inside sets of three cups.</summary>
internal static class PreferenceRates
{
    public static RateTable Table { get; } = new(
        "Preference",
        "Promised at 5 % each: no majority is shown and no telling is shown where nobody can tell, whatever habit people have for the "
            + "first cup; a majority as large as the margin is not ruled out; blind choices inside sets of three cups show no liking. "
            + "\"Two camps\" can tell and split evenly: what is said about a majority is no claim about telling, and the beer chosen "
            + "twice finds it out.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var tasters in new[] { 20, 36, 60 })
        {
            var twice = Draw.Once(same => PreferenceConsistency.Of(tasters, same).TellingShown);
            foreach (var habit in new[] { 0.5, 0.7, 0.9 })
            {
                var random = Draw.Source(seed, row++);
                var (majority, telling) = (0, 0);
                for (var run = 0; run < runs; run++)
                {
                    // Opposite orders: the first cup is A in one pair and B in the other, and half of the tasters start with A.
                    int forB = 0, same = 0;
                    for (var taster = 0; taster < tasters; taster++)
                    {
                        bool startsWithB = taster % 2 == 0;
                        bool firstForB = (random.NextDouble() < habit) == startsWithB,
                            secondForB = (random.NextDouble() < habit) != startsWithB;
                        if (firstForB) forB++;
                        if (firstForB == secondForB) same++;
                    }

                    if (PreferenceTest.Of(tasters - forB, forB).PreferenceShown) majority++;
                    if (twice(same)) telling++;
                }

                var setting = $"{tasters} tasters, none can tell, the first cup taken in {habit:P0} of pairs";
                yield return new(setting, "tasters can tell (the same beer twice)", 0.05, telling, runs);
                yield return new(setting, "a majority", 0.05, majority, runs);
            }

            foreach (var margin in new[] { 0.15, 0.2 })
            {
                var random = Draw.Source(seed, row++);
                var ruledOut = Draw.Once(forB => PreferenceParity.Of(tasters - forB, forB, margin).MajorityRuledOut);
                yield return new($"{tasters} tasters, {0.5 + margin:P0} prefer B", "so large a majority is ruled out", 0.05,
                    Draw.Count(runs, () => ruledOut(random.Successes(tasters, 0.5 + margin))), runs);
            }

            var camps = Draw.Source(seed, row++);
            yield return new($"{tasters} tasters, two even camps who can tell", "found by the same beer twice", null,
                Draw.Count(runs, () => twice(camps.Successes(tasters, 0.9))), runs);
        }

        foreach (var (aab, abb) in new[] { (24, 0), (0, 24), (12, 12), (36, 0), (40, 20) })
        {
            var random = Draw.Source(seed, row++);
            var liking = Draw.Once(forB => SetChoice.Of(aab, abb, forB).LikingShown);
            var half = Draw.Once(forB => PreferenceTest.Of(aab + abb - forB, forB).PreferenceShown);
            int shown = 0, naive = 0;
            for (var run = 0; run < runs; run++)
            {
                var forB = random.Successes(aab, 1.0 / 3) + random.Successes(abb, 2.0 / 3);
                if (liking(forB)) shown++;
                if (half(forB)) naive++;
            }

            yield return new($"{aab} sets AAB and {abb} sets ABB, cups chosen blindly", "the beer matters", 0.05, shown, runs);
            yield return new($"{aab} sets AAB and {abb} sets ABB, cups chosen blindly", "a preference, tested against one half", null,
                naive, runs);
        }
    }
}
