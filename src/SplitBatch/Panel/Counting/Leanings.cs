using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>Repeats of a two-sided protocol: which way each taster leans, and how often tasters agree with themselves.</summary>
/// <remarks>
/// A pooled count is no test here: people who perceive a difference may lean to different beers, and the repeats of one person lean
/// together. So the difference is judged taster by taster: if as many lean to A as to B, each taster's net leaning is as likely to have
/// the one sign as the other, and all signs are tried exactly (R. A. Fisher 1935, The Design of Experiments, section 21). The margin is
/// judged by the leaning and by agreement as well, because leanings to opposite beers cancel out in a count and still are differences
/// perceived.
/// </remarks>
internal sealed class Leanings(IReadOnlyList<TasterCount> counts)
{
    /// <summary>
    /// Two-sided: the chance of so large a net leaning if each taster were as likely to lean to the one beer as to the other.
    /// </summary>
    public double PValue
    {
        get
        {
            var net = counts.Select(c => Math.Abs((2 * c.Correct) - c.Sets)).Where(d => d > 0).ToArray();
            var observed = Math.Abs(counts.Sum(c => (2 * c.Correct) - c.Sets));
            var reach = net.Sum();
            var chance = new double[(2 * reach) + 1];
            chance[reach] = 1;
            foreach (var d in net)
            {
                var next = new double[chance.Length];
                for (var s = 0; s < chance.Length; s++)
                {
                    if (chance[s] == 0) continue;
                    next[s + d] += chance[s] / 2;
                    next[s - d] += chance[s] / 2;
                }

                chance = next;
            }

            return Math.Min(1, chance.Where((_, s) => Math.Abs(s - reach) >= observed).Sum());
        }
    }

    /// <summary>The smallest <see cref="PValue"/> that any answers of these tasters could have: all sets for the same beer.</summary>
    public double SmallestPValue => Math.Pow(2, 1 - counts.Count);

    /// <summary>Tasters with several sets who gave the same answer in all of them.</summary>
    public int Steady => Several.Count(c => c.Correct == 0 || c.Correct == c.Sets);

    /// <summary>
    /// The largest mean ability that so few steady tasters still allow, whichever beer each finds stronger; 0 where nobody had several
    /// sets.
    /// </summary>
    /// <param name="tail">One-sided error.</param>
    public double SteadyAllowed(double tail) => !Several.Any() ? 0
        : Steady == Several.Count() ? 1
        : ChanceOfSoFewSteady(0) <= tail ? 0
        : Root.Of(s => ChanceOfSoFewSteady(s) - tail, 0, 1);

    /// <summary>The largest chance of so few steady tasters that people with this mean ability can have.</summary>
    /// <remarks>
    /// Somebody of ability s is steady in r sets with the chance ((1 + s)^r + (1 - s)^r)/2^r. That curves upward, so of all spreads of
    /// ability people who are all alike are the least often steady: what holds for them holds for every spread, and for every mixture of
    /// directions.
    /// </remarks>
    public double ChanceOfSoFewSteady(double ability)
    {
        var chance = new double[counts.Count + 1];
        chance[0] = 1;
        foreach (var taster in Several)
        {
            var steady = (Math.Pow(1 + ability, taster.Sets) + Math.Pow(1 - ability, taster.Sets)) / Math.Pow(2, taster.Sets);
            for (var k = counts.Count; k >= 0; k--) chance[k] = (chance[k] * (1 - steady)) + (k > 0 ? chance[k - 1] * steady : 0);
        }

        return chance.Take(Steady + 1).Sum();
    }

    private IEnumerable<TasterCount> Several => counts.Where(c => c.Sets > 1);
}
