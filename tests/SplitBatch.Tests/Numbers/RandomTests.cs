using SplitBatch.Panel;
using System.Globalization;

namespace SplitBatch.Numbers;

public class RandomTests
{
    [Fact]
    public void Normal_numbers_follow_the_normal_distribution_tails_included()
    {
        const int draws = 1_000_000;
        double[] edges = [-5, -4, -3.7, -3, -2, -1.5, -1, -0.5, -0.1, 0, 0.1, 0.5, 1, 1.5, 2, 3, 3.7, 4, 5];
        var below = new int[edges.Length];
        double sum = 0, squares = 0, fourth = 0;
        var random = new SeededRandom(1);
        for (int i = 0; i < draws; i++)
        {
            double z = Ziggurat.Next(ref random);
            for (int k = 0; k < edges.Length; k++) below[k] += z < edges[k] ? 1 : 0;
            sum += z;
            squares += z * z;
            fourth += z * z * z * z;
        }
        for (int k = 0; k < edges.Length; k++)
        {
            double p = Gauss.Below(edges[k]);
            Assert.True(Math.Abs(below[k] - (draws * p)) < 5 * Math.Sqrt(draws * p * (1 - p)) + 1,
                $"below {edges[k]}: {below[k]} against {draws * p:0.0}");
        }
        Assert.InRange(sum / draws, -0.005, 0.005);
        Assert.InRange(squares / draws, 1 - 0.0072, 1 + 0.0072);
        Assert.InRange(fourth / draws, 3 - 0.05, 3 + 0.05);
    }

    [Fact]
    public void Whole_numbers_below_a_bound_come_equally_often()
    {
        var random = new SeededRandom(2);
        var counts = new int[7];
        for (int i = 0; i < 700_000; i++) counts[random.NextBelow(7)]++;
        Assert.All(counts, count => Assert.InRange(count, 100_000 - 1500, 100_000 + 1500));
        Assert.Throws<ArgumentOutOfRangeException>(() => random.NextBelow(0));
    }

    [Fact]
    public void A_seed_gives_the_numbers_of_NumPys_SFC64()
    {
        // tests/reference/panel/sfc64.csv: NumPy 1.24.2, its generator set to the same state.
        var streams = Reference.Read("sfc64.csv")
            .GroupBy(row => (Seed: long.Parse(row.Text("seed"), CultureInfo.InvariantCulture), Stream: row.Whole("stream"))).ToArray();
        Assert.Equal(5, streams.Length);
        foreach (var stream in streams)
        {
            var random = new SeededRandom(stream.Key.Seed, stream.Key.Stream);
            foreach (var row in stream) Assert.Equal(ulong.Parse(row.Text("bits"), CultureInfo.InvariantCulture), random.NextBits());
        }
    }
}
