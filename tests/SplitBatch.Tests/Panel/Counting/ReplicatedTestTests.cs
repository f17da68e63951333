using SplitBatch.Numbers;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class ReplicatedTestTests
{
    // Made-up data: 20 tasters, 4 triangles each.
    private static readonly TasterCount[] Twenty =
        [.. new[] { 4, 1, 2, 0, 3, 4, 1, 1, 2, 4, 0, 2, 3, 1, 4, 2, 1, 0, 3, 2 }.Select(x => new TasterCount(4, x))];

    [Fact]
    public void Plain_and_corrected_fits_agree_with_VGAM_and_direct_maximum_likelihood()
    {
        foreach (var row in Reference.Read("beta-binomial.csv"))
        {
            var counts = row.Text("n").Split(' ')
                .Zip(row.Text("x").Split(' '), (n, x) => new TasterCount(int.Parse(n, null), int.Parse(x, null))).ToArray();
            var plain = BetaBinomialFit.Of(counts);
            Assert.Equal(row.Number("mu"), plain.Model.Mean, 1e-7);
            Assert.Equal(row.Number("gamma"), plain.Model.Overdispersion, 1e-7);
            Assert.Equal(row.Number("loglik"), plain.LogLikelihood, 1e-8);
            Assert.Equal(row.Number("binomial"), plain.AlikeLogLikelihood, 1e-8);
            Assert.Equal(row.Number("tarone"), BetaBinomialFit.TaroneZ(counts), 1e-9);
            var corrected = BetaBinomialFit.Of(counts, row.Number("chance"));
            Assert.Equal(row.Number("loglik_corrected"), corrected.LogLikelihood, 1e-7);
            Assert.Equal(row.Number("mu_corrected"), corrected.Model.Mean, 2e-6);
            Assert.Equal(row.Number("gamma_corrected"), corrected.Model.Overdispersion, 2e-6);
        }
    }

    [Fact]
    public void Point_probabilities_agree_with_VGAM()
    {
        foreach (var row in Reference.Read("beta-binomial-pmf.csv"))
        {
            Assert.Equal(row.Number("p"), new BetaBinomial(row.Number("mu"), row.Number("gamma"))
                .Probability(row.Whole("x"), row.Whole("n")), 1e-13);
        }
    }

    /// <summary>The sheet of check values: VGAM 1.1-7, and direct maximum likelihood for the corrected form.</summary>
    [Fact]
    public void The_made_up_panel_equals_the_sheet_of_check_values()
    {
        var test = ReplicatedTest.Of(Protocol.Triangle, Twenty);
        Assert.Equal((80, 40), (test.Sets, test.Pooled.Correct));
        Assert.Equal(.5037234655, test.Plain.Model.Mean, 1e-8);
        Assert.Equal(.2688317712, test.Plain.Model.Overdispersion, 1e-8);
        Assert.Equal(1.370026289, test.Plain.Model.A, 1e-6);
        Assert.Equal(1.349772107, test.Plain.Model.B, 1e-6);
        Assert.Equal(6.700596, test.Plain.LikelihoodRatio, 1e-6);
        Assert.Equal(.004819, test.Plain.PValue, 1e-6);
        Assert.Equal(2.921187, test.TaroneZ, 1e-6);
        Assert.Equal(1.8064953, test.Plain.Model.DesignEffect(4), 1e-6);
        Assert.Equal(.0751331, test.StandardError, 1e-6);
        Assert.Equal(.255747, test.Corrected.Model.Mean, 1e-6);
        Assert.Equal(.721819, test.Corrected.Model.Overdispersion, 1e-6);
        Assert.Equal(-31.7510026, test.Corrected.LogLikelihood, 1e-7);
        Assert.Equal(.503831, test.Corrected.Model.CorrectShare, 1e-6);
    }

    /// <summary>
    /// 54 tasters with two sets each and 29 right, below chance (a public question of 2014): ability is nought, and how tasters differ
    /// cannot be told.
    /// </summary>
    [Fact]
    public void Below_chance_the_ability_is_nought_and_the_spread_is_not_invented()
    {
        var counts = Enumerable.Range(0, 54).Select(i => new TasterCount(2, i < 4 ? 2 : i < 25 ? 1 : 0)).ToArray();
        Assert.Equal(29, counts.Sum(c => c.Correct));
        var test = ReplicatedTest.Of(Protocol.Triangle, counts);
        Assert.Equal(.939306, test.Pooled.PValue, 5.1e-7);
        Assert.Equal(0, test.Corrected.Model.Mean);
        Assert.False(test.Corrected.OverdispersionIdentified);
        Assert.Contains("cannot be told", test.Corrected.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Tasters_who_are_all_alike_give_no_overdispersion()
    {
        var counts = new[] { 1, 2, 1, 2, 1, 2, 1, 2, 1, 2 }.Select(x => new TasterCount(3, x)).ToArray();
        var fit = BetaBinomialFit.Of(counts);
        Assert.Equal(0, fit.Model.Overdispersion);
        Assert.Equal(1, fit.PValue);
        Assert.True(BetaBinomialFit.TaroneZ(counts) < 0);
    }

    [Fact]
    public void Repeats_by_two_people_are_not_more_tasters_and_the_warning_says_so()
    {
        var test = ReplicatedTest.Of(Protocol.Triangle, [new(7, 7), new(7, 2)]);
        Assert.NotNull(test.Warning);
        Assert.StartsWith("14 sets were tasted by 2 people. That is not 14 tasters", test.Warning, StringComparison.Ordinal);
        Assert.EndsWith("the sets are worth between 2 and 3 tasters.", test.Warning, StringComparison.Ordinal);
        Assert.Contains(test.Warning, test.ToString(), StringComparison.Ordinal);
        // Two people who look alike by chance are still two people.
        var alike = ReplicatedTest.Of(Protocol.Triangle, [new(7, 4), new(7, 4)]);
        Assert.InRange(alike.WorthTasters.Low, 2, 7);
        Assert.Equal(14, alike.WorthTasters.High);
        Assert.Equal(1, ReplicatedTest.Of(Protocol.Triangle, [new(7, 4)]).WorthTasters.Low, 1e-5);
        Assert.Null(ReplicatedTest.Of(Protocol.Triangle, [new(1, 1), new(1, 0), new(1, 1)]).Warning);
    }

    [Fact]
    public void The_share_still_allowed_is_larger_when_tasters_differ_than_the_pooled_count_pretends()
    {
        var test = ReplicatedTest.Of(Protocol.Triangle, Twenty);
        var pooled = SimilarityTest.Of(Protocol.Triangle, 80, 40, 0.3).StillAllowed;
        Assert.True(test.StillAllowed() > pooled, $"{test.StillAllowed()} against {pooled}");
    }

    /// <summary>
    /// Ten tasters, twelve triangles each: two nearly always right, eight about as often as guessers. The pooled count would rule a
    /// margin out that the spread of tasters does not.
    /// </summary>
    [Fact]
    public void A_margin_is_not_ruled_out_by_repeats_alone()
    {
        TasterCount[] counts = [new(12, 12), new(12, 11), new(12, 3), new(12, 4), new(12, 2), new(12, 4), new(12, 5), new(12, 3),
            new(12, 4), new(12, 2)];
        var pooled = PanelReading.Of(Protocol.Triangle, 120, counts.Sum(c => c.Correct), margin: 0.35);
        var reading = PanelReading.OfRepeats(Protocol.Triangle, counts, margin: 0.35);
        Assert.Equal(PanelAnswer.DifferenceWithinMargin, pooled.Answer);
        Assert.Equal(PanelAnswer.DifferenceShown, reading.Answer);
        Assert.True(reading.Similarity.StillAllowed > 0.35);
        Assert.True(reading.Similarity.PValue > 0.05);
        Assert.Contains("That is not 120 tasters", reading.ToString(), StringComparison.Ordinal);
        // The limit and the p-value are two views of one chance.
        var limit = reading.Similarity.StillAllowed;
        Assert.Equal(0.05, SimilarityTest.Of(ReplicatedTest.Of(Protocol.Triangle, counts), limit).PValue, 1e-9);
    }

    [Fact]
    public void Without_repeats_both_readings_are_one()
    {
        var counts = Enumerable.Range(0, 18).Select(i => new TasterCount(1, i < 8 ? 1 : 0));
        Assert.Equal(
            PanelReading.Of(Protocol.Triangle, 18, 8, 0.3).ToString(),
            PanelReading.OfRepeats(Protocol.Triangle, counts, 0.3).ToString());
    }

    /// <summary>With one set each there is nothing to tell tasters apart by.</summary>
    [Fact]
    public void With_one_set_each_the_limit_is_that_of_the_binomial()
    {
        var counts = Enumerable.Range(0, 30).Select(i => new TasterCount(1, i < 14 ? 1 : 0));
        Assert.Equal(CountLimit.Discriminators(Protocol.Triangle, 30, 14),
            ReplicatedTest.Of(Protocol.Triangle, counts).StillAllowed(), 1e-9);
    }

    [Fact]
    public void The_spread_shows_numbers_of_tasters_and_no_names()
    {
        var spread = ReplicatedTest.Of(Protocol.Triangle, Twenty).Spread;
        Assert.Equal([3, 5, 5, 3, 4], spread.Select(r => r.Observed));
        Assert.Equal(20, spread.Sum(r => r.ByGuessing), 1e-9);
        Assert.Equal(20, spread.Sum(r => r.Fitted), 1e-9);
    }

    [Fact]
    public void Bad_counts_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ReplicatedTest.Of(Protocol.Triangle, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReplicatedTest.Of(Protocol.Triangle, [new(4, 5)]));
        Assert.Throws<NotApplicableException>(() => ReplicatedTest.Of(Protocol.ANotA, [new(4, 3)]));
    }
}
