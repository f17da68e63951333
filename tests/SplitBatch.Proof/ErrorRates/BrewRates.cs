using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;
using SplitBatch.Series;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Several brews of one belief: claims about the belief, where brews differ.</summary>
internal static class BrewRates
{
    private const int Tasters = 24;

    public static RateTable Table { get; } = new(
        "Several brews of one belief",
        "Each brew has a panel of 24. In the first rows a directed pair, and brews differ about nil: the spread is that of the log-odds "
            + "from brew to brew. Promised at 5 %: from three brews on no mean difference by t over brews or by the weighted mean, both "
            + "of log-odds; the next brew's number lies in its interval; \"at least u of k\" is not claimed where fewer have a "
            + "difference; each limit of the share of brews holds. With one brew or two no mean is stated, so there is nothing to miss. "
            + "\"Pooled\" is the habit of adding the counts of all brews.",
        Run);

    private static readonly Func<int, bool> PairShows = Draw.Once(key =>
        DifferenceTest.Of(Protocol.PairedTwoSided, key / 10_000, key % 10_000).DifferenceShown);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        for (var k = 1; k <= 12; k++)
        {
            foreach (var tau in new[] { 0, 0.5, 1 })
            {
                foreach (var rate in AboutNil(runs, Draw.Source(seed, row++), k, tau)) yield return rate;
            }

            foreach (var real in new[] { 0, 1, k / 2 }.Where(real => real < k).Distinct())
            {
                yield return AtLeast(runs, Draw.Source(seed, row++), k, real);
            }

            foreach (var share in new[] { 0.2, 0.5, 0.9 })
            {
                var random = Draw.Source(seed, row++);
                var limits = Draw.Once(found => BrewCount.ShareOfBrews(k, found));
                int low = 0, high = 0;
                for (var run = 0; run < runs; run++)
                {
                    var found = limits(random.Successes(k, share));
                    if (found.Low > share) low++;
                    if (found.High < share) high++;
                }

                yield return new($"{k} brews, it happens in {share:P0} of all", "the lower limit lies above", 0.05, low, runs);
                yield return new($"{k} brews, it happens in {share:P0} of all", "the upper limit lies below", 0.05, high, runs);
            }
        }

        foreach (var k in new[] { 3, 5, 8, 12 })
        {
            var random = Draw.Source(seed, row++);
            yield return new($"{k} brews (triangle), all guess", "a mean difference, t over brews", 0.05,
                Draw.Count(runs, () => BrewMean.Of(
                    [.. Enumerable.Range(0, k)
                        .Select(_ => BrewNumber.FromCount(Protocol.Triangle, Tasters,
                            random.Successes(Tasters, Protocol.Triangle.Chance)))]).Test is { PValue: <= 0.05, Mean: > 0 }), runs);
            yield return SameTasters(runs, Draw.Source(seed, row++), k);
            foreach (var rate in Triangles(runs, Draw.Source(seed, row++), k)) yield return rate;
        }
    }

    private static IEnumerable<ErrorRate> AboutNil(int runs, Random random, int k, double tau)
    {
        int pooled = 0, byT = 0, byShares = 0, weighted = 0, nextMisses = 0, flipped = 0;
        for (var run = 0; run < runs; run++)
        {
            int[] right = [.. Enumerable.Range(0, k).Select(_ => Panel())];
            if (PairShows((k * Tasters * 10_000) + right.Sum())) pooled++;
            if (k < BrewMean.FewestBrews) continue;
            BrewNumber[] brews = [.. right.Select(Number)];
            var mean = BrewMean.Of(brews).Test;
            if (mean.PValue <= 0.05) byT++;
            if (BrewMean.Of([.. right.Select(x => (double)x / Tasters - 0.5)]).Test.PValue <= 0.05) byShares++;
            if (!mean.Next.Contains(Number(Panel()).Value)) nextMisses++;
            if (RandomEffects.Of(brews).PValue <= 0.05) weighted++;
            if (BrewSigns.FlipPValue([.. brews.Select(brew => brew.Value)]) <= 0.05) flipped++;
        }

        var setting = FormattableString.Invariant($"{k} brews that differ by {tau:0.0} about nil");
        yield return new(setting, "a mean difference, counts pooled", null, pooled, runs);
        if (k < BrewMean.FewestBrews) yield break;
        yield return new(setting, "a mean difference, t over brews", 0.05, byT, runs);
        yield return new(setting, "a mean difference, t over the shares themselves", null, byShares, runs);
        yield return new(setting, "a mean difference, weighted with floor", 0.05, weighted, runs);
        yield return new(setting, "a mean difference, all signs tried", 0.05, flipped, runs);
        yield return new(setting, "the next brew lies outside its interval", 0.05, nextMisses, runs);

        int Panel() => random.Successes(Tasters, Share(random.Normal(0, tau)));
    }

    private static ErrorRate AtLeast(int runs, Random random, int k, int real)
    {
        var p = Draw.Once(x => ExactBinomial.AtLeast(x, Tasters, Protocol.Triangle.Chance));
        var able = Protocol.Triangle.CorrectShare(2);
        return new($"{k} brews (triangle), {real} with a d-prime of 2 and the others without", $"a difference in more than {real} of them",
            0.05, Draw.Count(runs, () =>
                BrewCount.ShownInAtLeast([.. Enumerable.Range(0, k)
                    .Select(i => p(random.Successes(Tasters, i < real ? able : Protocol.Triangle.Chance)))]) > real), runs);
    }

    /// <summary>Everybody sits in every brew, and each leans in a way of his own: the mean holds for these people.</summary>
    private static ErrorRate SameTasters(int runs, Random random, int k) => new(
        $"{k} brews that differ by 0.5, the same 24 tasters in all, who differ by 1.0",
        "the mean of these people over brews lies outside, t over brews", 0.05, Draw.Count(runs, () =>
        {
            double[] people = [.. Enumerable.Range(0, Tasters).Select(_ => random.Normal(0, 1))];
            var truth = people.Average(person => MeanShare(person, 0.5)) - 0.5;
            double[] brews = [.. Enumerable.Range(0, k).Select(_ =>
            {
                var brew = random.Normal(0, 0.5);
                return ((double)people.Sum(person => random.Successes(1, Share(person + brew))) / Tasters) - 0.5;
            })];
            return !BrewMean.Of(brews).Test.Interval.Contains(truth);
        }), runs);

    /// <summary>Triangles of d-prime 1.5, give or take 1 from brew to brew.</summary>
    private static IEnumerable<ErrorRate> Triangles(int runs, Random random, int k)
    {
        var curve = Enumerable.Range(0, 801).Select(i => Protocol.Triangle.CorrectShare(i / 100.0)).ToArray();
        var truth = Enumerable.Range(-400, 801).Select(i => i / 100.0)
            .Sum(z => Math.Exp(-z * z / 2) * Right(1.5 + z)) / Enumerable.Range(-400, 801).Select(i => i / 100.0)
                .Sum(z => Math.Exp(-z * z / 2));
        var pooledInterval = Draw.Once(x => ShareIntervals.ClopperPearson(x, k * Tasters));
        int pooled = 0, byT = 0;
        for (var run = 0; run < runs; run++)
        {
            int[] right = [.. Enumerable.Range(0, k).Select(_ => random.Successes(Tasters, Right(random.Normal(1.5, 1))))];
            if (!pooledInterval(right.Sum()).Contains(truth)) pooled++;
            if (!BrewMean.Of([.. right.Select(x => (double)x / Tasters)]).Test.Interval.Contains(truth)) byT++;
        }

        yield return new($"{k} brews (triangle), d-prime 1.5 give or take 1", "the interval from pooled counts misses the mean share",
            null, pooled, runs);
        yield return new($"{k} brews (triangle), d-prime 1.5 give or take 1",
            "the interval of t over brews misses it (shares this skew are not normal)", null, byT, runs);

        double Right(double d) => curve[(int)Math.Round(Math.Min(8, Math.Abs(d)) * 100)];
    }

    private static double Share(double logOdds) => 1 / (1 + Math.Exp(-logOdds));

    private static double MeanShare(double middle, double spread)
    {
        double sum = 0, weights = 0;
        for (var z = -4.0; z <= 4; z += 0.25)
        {
            var weight = Math.Exp(-z * z / 2);
            sum += weight * Share(middle + (spread * z));
            weights += weight;
        }

        return sum / weights;
    }

    private static BrewNumber Number(int right) => BrewNumber.FromCount(Protocol.PairedDirectional, Tasters, right);
}
