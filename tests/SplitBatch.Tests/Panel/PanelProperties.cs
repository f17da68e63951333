using CsCheck;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel;

/// <summary>What must hold for every protocol, size and level.</summary>
public class PanelProperties
{
    private static readonly Protocol[] Counted = [.. Protocol.All.Where(p => p.HasKnownChance)];
    private static readonly Gen<Protocol> GenProtocol = Gen.Int[0, Counted.Length - 1].Select(i => Counted[i]);
    private static readonly Gen<double> GenAlpha = OneOf(0.2, 0.1, 0.05, 0.01, 0.001);

    private static Gen<double> OneOf(params double[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    [Fact]
    public void The_critical_count_is_the_smallest_that_keeps_alpha() =>
        Gen.Select(GenProtocol, Gen.Int[1, 400], GenAlpha).Sample((protocol, n, alpha) =>
        {
            var critical = Power.CriticalCount(protocol, n, alpha);
            // The slow way: add point probabilities from the top until alpha is passed.
            double tail = 0;
            var x = n;
            while (x >= 0 && tail + ExactBinomial.Exactly(x, n, protocol.Chance) <= alpha / protocol.Sides * (1 + 1e-12))
                tail += ExactBinomial.Exactly(x--, n, protocol.Chance);
            return critical == (x == n ? null : x + 1);
        });

    [Fact]
    public void Power_rises_with_d_prime() =>
        Gen.Select(GenProtocol, Gen.Int[8, 120], GenAlpha, Gen.Double[0, 3], Gen.Double[0.05, 1]).Sample((protocol, n, alpha, d, more) =>
        {
            if (Power.CriticalCount(protocol, n, alpha) is null) return true;
            double At(double dPrime) => Power.Of(protocol, n, alpha, protocol.Discriminators(protocol.CorrectShare(dPrime)));
            return At(d + more) > At(d) || At(d) > 1 - 1e-12;
        }, iter: 60);

    [Fact]
    public void The_true_size_of_a_test_never_exceeds_alpha() =>
        Gen.Select(GenProtocol, Gen.Int[1, 500], GenAlpha).Sample((protocol, n, alpha) =>
            Power.Of(protocol, n, alpha, 0) <= alpha * (1 + 1e-11));

    [Fact]
    public void The_p_value_falls_as_right_answers_rise() =>
        Gen.Select(Gen.Int[0, 4].Select(i => Counted.Where(p => p.Sides == 1).ElementAt(i)), Gen.Int[2, 300]).Sample((protocol, n) =>
        {
            var before = 2.0;
            for (var x = 0; x <= n; x++)
            {
                var p = DifferenceTest.Of(protocol, n, x).PValue;
                if (p > before || (p == before && p < 1 - 1e-12)) return false;
                before = p;
            }

            return true;
        });

    /// <summary>
    /// Exact coverage by summing over every count: never below the level for Clopper-Pearson, near it for the others where n is large and
    /// the share is not near an end.
    /// </summary>
    [Fact]
    public void Intervals_cover_the_true_share()
    {
        Gen.Select(Gen.Int[1, 80], Gen.Double[0.001, 0.999], OneOf(0.8, 0.9, 0.95, 0.99)).Sample((n, p, level) =>
            Coverage(n, p, x => ShareIntervals.ClopperPearson(x, n, level)) >= level - 1e-12, iter: 200);
        foreach (var p in new[] { 0.2, 1.0 / 3, 0.5, 0.8 })
        {
            Assert.InRange(Coverage(100, p, x => ShareIntervals.Wilson(x, 100)), 0.93, 0.975);
            Assert.InRange(Coverage(100, p, x => ShareIntervals.Jeffreys(x, 100)), 0.93, 0.975);
        }

        static double Coverage(int n, double p, Func<int, Interval> interval) =>
            Enumerable.Range(0, n + 1).Where(x => interval(x).Contains(p)).Sum(x => ExactBinomial.Exactly(x, n, p));
    }

    [Fact]
    public void The_exact_interval_of_d_prime_covers_at_least_as_often_as_it_says_and_the_likelihood_interval_about()
    {
        foreach (var protocol in new[] { Protocol.Triangle, Protocol.DuoTrio, Protocol.Tetrad, Protocol.PairedDirectional,
            Protocol.ThreeAfc })
        {
            foreach (var (n, d) in new[] { (12, 2.1), (24, 1.5), (100, 1.5) })
            {
                var p = protocol.CorrectShare(d);
                var likely = Enumerable.Range(0, n + 1).Where(x => ExactBinomial.Exactly(x, n, p) > 1e-9)
                    .Select(x => (Chance: ExactBinomial.Exactly(x, n, p), DPrime: DPrimeEstimate.Of(protocol, n, x))).ToList();
                Assert.InRange(likely.Where(one => one.DPrime.Interval.Contains(d)).Sum(one => one.Chance), 0.95, 1);
                Assert.InRange(likely.Where(one => one.DPrime.LikelihoodInterval!.Value.Contains(d)).Sum(one => one.Chance), 0.91, 0.995);
            }
        }
    }

    [Fact]
    public void A_margin_is_wrongly_ruled_out_no_more_often_than_beta() =>
        Gen.Select(GenProtocol, Gen.Int[6, 200], Gen.Double[0.1, 0.6], OneOf(0.2, 0.1, 0.05)).Sample((protocol, n, margin, beta) =>
        {
            var p = protocol.CorrectFromDiscriminators(margin);
            var wrong = Enumerable.Range(0, n + 1)
                .Where(x => SimilarityTest.Of(protocol, n, x, margin, beta).MarginRuledOut)
                .Sum(x => ExactBinomial.Exactly(x, n, p));
            return wrong <= beta * (1 + 1e-11);
        }, iter: 100);

    [Fact]
    public void No_reading_calls_two_beers_the_same() =>
        Gen.Select(GenProtocol, Gen.Int[1, 120], Gen.Double[0, 1], OneOf(0.2, 0.3, 0.5)).Sample((protocol, n, share, margin) =>
        {
            var x = (int)Math.Round(share * n);
            var reading = PanelReading.Of(protocol, n, x, margin);
            string[] texts = [reading.ToString(), reading.Difference.ToString(), reading.Similarity.ToString(),
                BayesReading.Of(protocol, n, x, margin).ToString()];
            return texts.All(
                t => !t.Replace("does not mean the same", "", StringComparison.Ordinal)
                    .Contains("same", StringComparison.OrdinalIgnoreCase)
                    && !t.Contains("no difference between", StringComparison.OrdinalIgnoreCase)
                    && !t.Contains("identical", StringComparison.OrdinalIgnoreCase));
        }, iter: 300);

    [Fact]
    public void A_walk_along_the_critical_counts_keeps_the_exact_tail()
    {
        foreach (var chance in new[] { 1.0 / 3, 0.5, 0.1 })
        {
            TailWalk walk = new(chance), truth = new(0.3 + (0.7 * chance));
            for (var n = 1; n <= 2500; n++)
            {
                walk.Step();
                truth.Step();
                if (!walk.Reaches(0.01))
                {
                    walk.Raise();
                    truth.Raise();
                }

                Assert.Equal(ExactBinomial.CriticalCount(n, chance, 0.01), walk.Count);
                Assert.True(walk.Tail == walk.Exact || Reference.RelativeError(walk.Exact, walk.Tail) < 1e-11);
                Assert.Equal(truth.Exact, truth.Tail, 1e-12);
            }
        }
    }
}
