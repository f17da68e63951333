using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class BayesReadingTests
{
    [Fact]
    public void Posterior_and_bayes_factor_agree_with_quadrature_in_R()
    {
        foreach (var row in Reference.Read("bayes.csv"))
        {
            var protocol = Reference.ProtocolWith(row.Number("chance"), 1);
            var reading = BayesReading.Of(protocol, row.Whole("n"), row.Whole("x"), row.Number("margin"), row.Number("a"),
                row.Number("b"));
            Assert.Equal(row.Number("mean"), reading.Mean, 1e-8);
            Assert.Equal(row.Number("above"), reading.ChanceAboveMargin, 1e-8);
            Assert.Equal(row.Number("low"), reading.Credible().Low, 1e-7);
            Assert.Equal(row.Number("high"), reading.Credible().High, 1e-7);
            Assert.True(Reference.RelativeError(row.Number("factor"), reading.BayesFactor) < 1e-7);
        }
    }

    /// <summary>
    /// With a flat prior and a guessing chance of 1/2 the share right is uniform on [1/2, 1], so none right of n leaves 1/(n + 1) of the
    /// guesser's likelihood.
    /// </summary>
    [Fact]
    public void None_right_has_the_bayes_factor_found_by_hand() =>
        Assert.Equal(1.0 / 13, BayesReading.Of(Protocol.Triangle, 12, 0, 0.3).BayesFactor, 1e-13);

    [Fact]
    public void A_two_sided_reading_does_not_care_which_beer_is_which()
    {
        BayesReading one = BayesReading.Of(Protocol.PairedTwoSided, 30, 9, 0.2),
            other = BayesReading.Of(Protocol.PairedTwoSided, 30, 21, 0.2);
        Assert.Equal(one.ChanceAboveMargin, other.ChanceAboveMargin, 1e-12);
        Assert.Equal(one.BayesFactor, other.BayesFactor, 1e-9);
        // By quadrature of the two directions, each half of the prior.
        var total = Gauss.Integral(Likelihood, 0, 1);
        Assert.Equal(Gauss.Integral(Likelihood, 0.2, 1) / total, one.ChanceAboveMargin, 1e-10);
        Assert.Equal(total / Math.Pow(0.5, 30), one.BayesFactor, 1e-8);

        static double Likelihood(double s) =>
            ((Math.Pow((1 + s) / 2, 9) * Math.Pow((1 - s) / 2, 21)) + (Math.Pow((1 + s) / 2, 21) * Math.Pow((1 - s) / 2, 9))) / 2;
    }

    [Fact]
    public void The_density_integrates_to_one_and_the_sentence_names_the_prior()
    {
        var reading = BayesReading.Of(Protocol.Triangle, 18, 8, 0.3);
        var density = reading.Density(1000);
        Assert.Equal(1, density.Average(p => p.Density), 1e-3);
        Assert.StartsWith("From a flat prior, 8 of 18 (triangle): the share of discriminators is about 22 %", reading.ToString(),
            StringComparison.Ordinal);
        Assert.StartsWith("From a Beta(1, 9) prior", BayesReading.Of(Protocol.Triangle, 18, 8, 0.3, 1, 9).ToString(),
            StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => BayesReading.Of(Protocol.Triangle, 18, 8, 0.3, 0, 1));
    }
}
