using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Panel.Liking;

public class RatingTests
{
    [Fact]
    public void Paired_t_and_signed_ranks_agree_with_R()
    {
        foreach (var row in Reference.Read("ratings.csv"))
        {
            var ratings = row.Text("d").Split(' ')
                .Select((d, i) => new Rating($"T{i:00}", "bitterness", 0, double.Parse(d, CultureInfo.InvariantCulture)));
            var comparison = RatingComparison.Of(ratings);
            Assert.Equal(row.Number("mean"), comparison.Difference, 1e-12);
            Assert.NotNull(comparison.DifferenceInterval);
            Assert.Equal(row.Number("low"), comparison.DifferenceInterval.Value.Low, 1e-9);
            Assert.Equal(row.Number("high"), comparison.DifferenceInterval.Value.High, 1e-9);
            Assert.NotNull(comparison.TValue);
            Assert.Equal(row.Number("t"), comparison.TValue.Value, 1e-10);
            Assert.Equal(row.Number("t_p"), comparison.TPValue, 1e-10);
            Assert.Equal(row.Number("v"), comparison.Ranks.RankSum, 1e-12);
            Assert.Equal(row.Number("w_p"), comparison.Ranks.PValue, 1e-12);
        }
    }

    /// <summary>
    /// With ties and zeros R falls back on a normal approximation, so the exact test is checked against every sign pattern.
    /// </summary>
    [Fact]
    public void Signed_ranks_with_ties_and_zeros_equal_enumeration_of_all_signs()
    {
        double[] d = [1, -1, 2, 2, 0, 3, -2, 1, 4, 0, 3];
        var test = SignedRanks.Of(d);
        Assert.Equal((9, 2), (test.Used, test.Zeros));
        double[] used = [.. d.Where(x => x != 0)];
        double[] ranks =
        [
            .. used.Select(x => used.Count(y => Math.Abs(y) < Math.Abs(x)) + ((used.Count(y => Math.Abs(y) == Math.Abs(x)) + 1) / 2.0)),
        ];
        var observed = ranks.Where((_, i) => used[i] > 0).Sum();
        Assert.Equal(observed, test.RankSum);
        int below = 0, above = 0;
        for (var pattern = 0; pattern < 512; pattern++)
        {
            var sum = ranks.Where((_, i) => (pattern >> i & 1) == 1).Sum();
            if (sum <= observed) below++;
            if (sum >= observed) above++;
        }

        Assert.Equal(Math.Min(1, 2 * Math.Min(below, above) / 512.0), test.PValue, 1e-13);
        Assert.Equal(1, SignedRanks.Of([0, 0]).PValue);
    }

    [Fact]
    public void Holms_correction_agrees_with_R()
    {
        var rows = Reference.Read("holm.csv");
        foreach (var (row, adjusted) in rows.Zip(Holm.Adjust([.. rows.Select(r => r.Number("p"))])))
        {
            Assert.Equal(row.Number("adjusted"), adjusted, 1e-12);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => Holm.Adjust([0.5, 1.2]));
    }

    [Fact]
    public void Every_attribute_is_compared_among_all_and_among_correct_tasters_and_corrected_together()
    {
        Rating[] ratings =
        [
            .. Enumerable.Range(0, 12).Select(i => new Rating($"T{i:00}", "bitterness", 5, 6 + (i % 4 / 10.0), WasCorrect: i % 2 == 0)),
            .. Enumerable.Range(0, 12).Select(i => new Rating($"T{i:00}", "liking", 6, 6 + (i % 3) - 1, WasCorrect: i % 2 == 0)),
        ];
        var all = RatingComparison.OfAll(ratings);
        Assert.Equal(["bitterness All 12", "liking All 12", "bitterness Correct 6", "liking Correct 6"],
            all.Select(c => $"{c.Attribute} {c.Group} {c.Tasters}"));
        Assert.All(all, c => Assert.Equal(4, c.Questions));
        Assert.Equal(4 * 2 / 4096.0, all[0].AdjustedPValue, 1e-12);
        Assert.Contains("after correction for 4 questions", all[0].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("a difference is shown.", all[0].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("no difference shown, which does not mean the same.", all[1].ToString(), StringComparison.Ordinal);
        Assert.Contains("(some by guessing)", all[2].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Ratings_that_cannot_be_compared_are_refused()
    {
        Assert.Throws<ArgumentException>(() => RatingComparison.Of([]));
        Assert.Contains("T1 rated liking more than once",
            Assert.Throws<ArgumentException>(() => RatingComparison.Of([new("T1", "liking", 1, 2), new("T1", "liking", 2, 2)])).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RatingComparison.Of([new("T1", "liking", 1, 2), new("T2", "bitterness", 2, 2)]));
        Assert.Contains("by T1 is not a number",
            Assert.Throws<ArgumentException>(() => RatingComparison.Of([new("T1", "liking", double.NaN, 2)])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_preference_is_tested_two_sided_among_those_who_chose()
    {
        var test = PreferenceTest.Of(forA: 6, forB: 14, none: 4);
        Assert.Equal(0.115318298339844, test.PValue, 1e-12); // R: binom.test(14, 20)$p.value, printed to 15 digits
        Assert.Equal("14 for B, 6 for A, 4 without a preference: no preference shown (p = 0.115); of those who choose, between 46 % and "
            + "88 % may prefer B.", test.ToString());
        Assert.True(PreferenceTest.Of(3, 17).PreferenceShown);
        Assert.Equal(1, PreferenceTest.Of(0, 0, 5).PValue);
        Assert.Equal("Nobody chose, 5 without a preference.", PreferenceTest.Of(0, 0, 5).ToString());
    }
}
