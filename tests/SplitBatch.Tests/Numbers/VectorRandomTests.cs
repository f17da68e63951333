using static SplitBatch.Bitterness.BitternessReference;

namespace SplitBatch.Numbers;

/// <summary>Against tests/reference/bitterness/Xoshiro.java: the JDK's own xoshiro256++ and SplitMix64.</summary>
public class VectorRandomTests
{
    [Theory]
    [InlineData("rectangular", 12)]
    [InlineData("normal", 16)]
    public void Numbers_are_those_of_the_JDKs_generators(string shape, int length)
    {
        foreach (var block in Rows("Xoshiro.csv").Where(row => row[2] == shape).GroupBy(row => (row[0], row[1])))
        {
            var random = new VectorRandom((ulong)long.Parse(block.Key.Item1, System.Globalization.CultureInfo.InvariantCulture),
                (ulong)Number(block.Key.Item2));
            var drawn = new double[length];
            if (shape == "normal") random.FillNormal(drawn);
            else random.FillRectangular(drawn);
            Assert.Equal(length, block.Count());
            foreach (var (row, value) in block.Zip(drawn)) Assert.Equal(Number(row[4]), value, 1e-12);
        }
    }

    [Fact]
    public void A_span_is_filled_to_its_end_and_the_next_goes_on_where_it_ended()
    {
        VectorRandom whole = new(5, 3), halves = new(5, 3);
        double[] all = new double[32], first = new double[16], second = new double[16];
        whole.FillNormal(all);
        halves.FillNormal(first);
        halves.FillNormal(second);
        Assert.Equal(all, first.Concat(second));
        Assert.DoesNotContain(0.0, all);
    }
}
