using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Liking;

/// <summary>
/// Repeats of the two-sided paired comparison: people may lean to different beers, and one person's repeats lean together.
/// </summary>
public class RepeatedPairsTests
{
    private static readonly Protocol Pair = Protocol.PairedTwoSided;

    [Theory]
    [InlineData(20, 15)]
    [InlineData(9, 1)]
    [InlineData(12, 6)]
    public void With_one_set_each_the_test_is_the_two_sided_binomial(int tasters, int forB)
    {
        var counts = Enumerable.Range(0, tasters).Select(i => new TasterCount(1, i < forB ? 1 : 0)).ToArray();
        Assert.Equal(DifferenceTest.Of(Pair, tasters, forB).PValue, ReplicatedTest.Of(Pair, counts).PValue, 1e-12);
    }

    [Fact]
    public void The_p_value_equals_the_enumeration_of_all_signs()
    {
        TasterCount[] counts = [new(4, 4), new(4, 1), new(3, 3), new(5, 2), new(4, 2), new(3, 2), new(4, 4)];
        int[] net = [.. counts.Select(c => (2 * c.Correct) - c.Sets)];
        var reached = Enumerable.Range(0, 1 << net.Length).Count(signs =>
            Math.Abs(net.Select((d, i) => (signs >> i & 1) == 1 ? Math.Abs(d) : -Math.Abs(d)).Sum()) >= Math.Abs(net.Sum()));
        Assert.Equal(reached / (double)(1 << net.Length), ReplicatedTest.Of(Pair, counts).PValue, 1e-12);
    }

    [Fact]
    public void Two_people_cannot_show_a_leaning_however_often_they_repeat()
    {
        var reading = PanelReading.OfRepeats(Pair, [new(10, 10), new(10, 10)], margin: 0.3);
        Assert.Equal(0.5, reading.Difference.PValue, 1e-12);
        Assert.False(reading.Difference.DifferenceShown);
        Assert.Null(reading.Difference.CriticalCount);
        Assert.True(DifferenceTest.Of(Pair, 20, 20).DifferenceShown);
    }

    [Fact]
    public void People_who_lean_to_opposite_beers_do_not_rule_a_margin_out()
    {
        // Ten always find A stronger and ten always B: the pooled count is that of guessing, and all twenty perceive a difference.
        var counts = Enumerable.Range(0, 20).Select(i => new TasterCount(5, i % 2 * 5)).ToArray();
        var reading = PanelReading.OfRepeats(Pair, counts, margin: 0.5);
        Assert.True(SimilarityTest.Of(Pair, 100, 50, 0.5).MarginRuledOut);
        Assert.False(reading.Similarity.MarginRuledOut);
        Assert.Equal(1, reading.Similarity.StillAllowed);
        Assert.True(reading.Similarity.Repeats!.LeanApart);
        Assert.Contains("lean to different beers", reading.Similarity.Repeats.ToString(), StringComparison.Ordinal);
        Assert.Equal(PanelAnswer.Inconclusive, reading.Answer);
    }

    [Fact]
    public void Many_guessers_with_repeats_rule_a_large_margin_out()
    {
        // As many as guessing foretells: of 64 people with 4 sets, 4, 16, 24, 16 and 4 choose B so often.
        var counts = new[] { 4, 16, 24, 16, 4 }.SelectMany((times, x) => Enumerable.Repeat(new TasterCount(4, x), times)).ToArray();
        var reading = PanelReading.OfRepeats(Pair, counts, margin: 0.4);
        Assert.Equal(PanelAnswer.MarginRuledOut, reading.Answer);
        Assert.True(reading.Similarity.StillAllowed >= SimilarityTest.Of(Pair, 256, 128, 0.4).StillAllowed);
        // Eight steady of 64 are not yet too few for people who lean by 30 %, each to a beer of his own.
        Assert.Equal(PanelAnswer.Inconclusive, PanelReading.OfRepeats(Pair, counts, margin: 0.3).Answer);
    }

    [Fact]
    public void Both_directions_are_read_alike()
    {
        TasterCount[] counts = [new(4, 4), new(4, 1), new(4, 3), new(3, 2), new(4, 4), new(4, 2)];
        TasterCount[] turned = [.. counts.Select(c => new TasterCount(c.Sets, c.Sets - c.Correct))];
        PanelReading one = PanelReading.OfRepeats(Pair, counts, 0.4), other = PanelReading.OfRepeats(Pair, turned, 0.4);
        Assert.Equal(one.Difference.PValue, other.Difference.PValue, 1e-12);
        Assert.Equal(one.Similarity.StillAllowed, other.Similarity.StillAllowed, 1e-6);
        Assert.Equal(one.Difference.DiscriminatorsInterval.Low, other.Difference.DiscriminatorsInterval.Low, 1e-6);
    }

    [Fact]
    public void People_who_lean_but_not_together_are_seldom_taken_for_a_difference_in_one_direction()
    {
        // Twelve people, five sets each; each finds one of the beers stronger nine times in ten, and which one is a coin's toss.
        var random = new Random(7);
        const int panels = 2000;
        int byTaster = 0, pooled = 0;
        for (var i = 0; i < panels; i++)
        {
            var counts = Enumerable.Range(0, 12).Select(_ =>
            {
                var share = random.Next(2) == 0 ? 0.9 : 0.1;
                return new TasterCount(5, Enumerable.Range(0, 5).Count(_ => random.NextDouble() < share));
            }).ToArray();
            var test = ReplicatedTest.Of(Pair, counts);
            if (test.DifferenceShown) byTaster++;
            if (test.Pooled.DifferenceShown) pooled++;
        }

        Assert.InRange(byTaster / (double)panels, 0, 0.05 + (3 * Math.Sqrt(0.05 * 0.95 / panels)));
        Assert.True(pooled > 4 * byTaster, $"pooled {pooled}, by taster {byTaster}");
    }

    [Fact]
    public void Intervals_with_repeats_are_not_those_of_as_many_tasters()
    {
        TasterCount[] counts = [new(5, 5), new(5, 5), new(5, 1), new(5, 2), new(5, 4), new(5, 1)];
        var reading = PanelReading.OfRepeats(Protocol.Triangle, counts, margin: 0.3);
        var pooled = DifferenceTest.Of(Protocol.Triangle, 30, 18);
        Assert.True(reading.Difference.DiscriminatorsInterval.Low < pooled.DiscriminatorsInterval.Low);
        Assert.True(reading.Difference.DiscriminatorsInterval.High > pooled.DiscriminatorsInterval.High);
        Assert.True(reading.Difference.DPrime.Interval.High > pooled.DPrime.Interval.High);
        Assert.Equal(pooled.PValue, reading.Difference.PValue, 1e-12);
    }
}
