namespace SplitBatch.Panel;

public class PsychometricReferenceTests
{
    /// <summary>R's adaptive quadrature; the duo-trio from its decision rule in two dimensions, the yes/no protocols by search for the best line.</summary>
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
