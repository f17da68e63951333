using SplitBatch.Panel;

namespace SplitBatch.Numbers;

/// <summary>The walk behind panel sizes against tails computed afresh, also where chances fall below the smallest double.</summary>
public class TailWalkTests
{
    [Theory]
    [InlineData(0.1, 0.05)]
    [InlineData(1.0 / 3, 0.001)]
    [InlineData(0.5, 0.2)]
    [InlineData(0.9, 0.05)]
    public void The_walk_along_critical_counts_keeps_the_exact_tail(double p, double alpha)
    {
        var walk = new TailWalk(p);
        for (var n = 1; n <= 1600; n++)
        {
            walk.Step();
            if (!walk.Reaches(alpha)) walk.Raise();
            if (n % 53 != 0 && n % 512 > 2) continue;
            Assert.Equal(n, walk.Trials);
            Assert.Equal(ExactBinomial.CriticalCount(n, p, alpha), walk.Count);
            Assert.True(Reference.RelativeError(ExactBinomial.AtLeast(walk.Count, n, p), walk.Tail) < 1e-11,
                $"{walk.Count} of {n}: {walk.Tail:r}");
            Assert.Equal(ExactBinomial.AtLeast(walk.Count, n, p), walk.Exact);
        }
    }

    /// <summary>A count needed so large that its chance is no double, and then trials enough to make it likely again.</summary>
    [Fact]
    public void A_tail_that_has_vanished_comes_back()
    {
        var walk = new TailWalk(0.4);
        for (var n = 0; n < 2000; n++) walk.Step();
        while (walk.Count < 1990) walk.Raise();
        Assert.Equal((2000, 1990), (walk.Trials, walk.Count));
        Assert.InRange(walk.Tail, 0, 1e-240);
        while (walk.Trials < 5000)
        {
            walk.Step();
            if (walk.Trials % 100 != 0) continue;
            var exact = ExactBinomial.AtLeast(1990, walk.Trials, 0.4);
            Assert.True(exact < 1e-240 ? walk.Tail < 1e-239 : Reference.RelativeError(exact, walk.Tail) < 1e-10,
                $"{walk.Trials}: {walk.Tail:r} for {exact:r}");
        }

        Assert.InRange(walk.Tail, 0.6, 0.65);
    }

    /// <summary>Raising the count past every trial leaves nothing, never less than nothing.</summary>
    [Fact]
    public void A_tail_never_falls_below_nought()
    {
        foreach (var p in new[] { 0.05, 1.0 / 3, 0.7 })
        {
            var walk = new TailWalk(p);
            for (var n = 0; n < 200; n++) walk.Step();
            while (walk.Count < 201)
            {
                walk.Raise();
                Assert.InRange(walk.Tail, 0, 1);
                Assert.Equal(ExactBinomial.AtLeast(walk.Count, 200, p), walk.Tail, 1e-12);
            }
        }
    }

    /// <summary>
    /// Five coins: five heads have exactly 1/32. A limit that equals the tail is reached; a billionth less is not, a billionth more is.
    /// </summary>
    [Fact]
    public void A_tie_is_reached_and_a_near_miss_is_not()
    {
        var walk = new TailWalk(0.5);
        for (var n = 0; n < 5; n++) walk.Step();
        while (walk.Count < 5) walk.Raise();
        Assert.True(walk.Reaches(1.0 / 32));
        Assert.True(walk.Reaches(1.0 / 32 * (1 + 1e-10)));
        Assert.False(walk.Reaches(1.0 / 32 * (1 - 1e-10)));
        Assert.False(walk.Reaches(1.0 / 32 * 0.9));
        Assert.True(walk.Reaches(1.0 / 32 * 1.1));
    }
}
