using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Protocols;

public class PsychometricReferenceTests
{
    /// <summary>
    /// R's adaptive quadrature; the duo-trio from its decision rule in two dimensions, the yes/no protocols by search for the best line.
    /// </summary>
    [Fact]
    public void Psychometric_functions_agree_with_independent_quadrature()
    {
        foreach (var row in Reference.Read("psychometric.csv"))
        {
            // The two-dimensional integral over a kinked decision rule is good to about 1e-7, the others to 1e-10.
            var tolerance = row.Text("protocol") == "duo-trio" ? 2e-7 : 1e-9;
            Assert.Equal(row.Number("pc"), Protocol.Parse(row.Text("protocol")).CorrectShare(row.Number("d")), tolerance);
        }
    }

    [Fact]
    public void D_prime_and_its_intervals_agree_with_a_search_over_d_in_R()
    {
        foreach (var row in Reference.Read("d-prime.csv"))
        {
            var estimate = DPrimeEstimate.Of(Protocol.Parse(row.Text("protocol")), row.Whole("n"), row.Whole("x"), row.Number("level"));
            // A search for a flat top is good to the root of the rounding; the ends are crossed steeply. Near chance even they are flat.
            Assert.Equal(row.Number("d"), estimate.Value, 1e-5);
            Assert.Equal(row.Number("low"), estimate.LikelihoodInterval!.Value.Low, 1e-6);
            Assert.Equal(row.Number("high"), estimate.LikelihoodInterval.Value.High, 1e-6);
            Assert.Equal(row.Number("exact_low"), estimate.Interval.Low, 1e-6);
            Assert.Equal(row.Number("exact_high"), estimate.Interval.High, 1e-6);
        }
    }

    /// <summary>Two million simulated sets each: three standard errors are about 0.001.</summary>
    [Fact]
    public void Two_out_of_five_agrees_with_simulation_of_the_grouping_it_is_derived_from()
    {
        foreach (var row in Reference.Read("two-out-of-five.csv"))
        {
            var share = row.Number("pc");
            Assert.Equal(share, Protocol.TwoOutOfFive.CorrectShare(row.Number("d")), 4 * Math.Sqrt(share * (1 - share) / 2e6));
        }
    }
}
