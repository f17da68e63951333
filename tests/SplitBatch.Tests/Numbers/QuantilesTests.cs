using CsCheck;

namespace SplitBatch.Numbers;

public class QuantilesTests
{
    [Fact]
    public void They_agree_with_sorting_the_sample() =>
        Gen.Select(Gen.Double[-50, 50].Array[1, 300], Gen.Double[0, 1]).Sample((values, share) =>
        {
            var sorted = values.Order().ToArray();
            var place = share * (values.Length - 1);
            var below = (int)Math.Floor(place);
            var expected = sorted[below] + (place - below) * (sorted[Math.Min(below + 1, sorted.Length - 1)] - sorted[below]);
            Assert.Equal(expected, Quantiles.Of(values, share)[0], 1e-9);
        });

    [Fact]
    public void A_sample_of_one_value_has_that_value_everywhere() => Assert.Equal([4.0, 4.0], Quantiles.Of([4.0, 4.0, 4.0], 0.1, 0.9));
}
