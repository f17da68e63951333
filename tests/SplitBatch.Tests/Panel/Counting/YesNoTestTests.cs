using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

public class YesNoTestTests
{
    [Fact]
    public void Fishers_test_and_same_different_d_prime_agree_with_R()
    {
        foreach (var row in Reference.Read("yes-no.csv"))
        {
            var test = YesNoTest.Of(Protocol.SameDifferent, row.Whole("hits"), row.Whole("different"), row.Whole("alarms"),
                row.Whole("alike"));
            Assert.True(Reference.RelativeError(row.Number("p"), test.PValue) < 1e-11);
            Assert.Equal(row.Number("chi"), test.ChiSquare, 1e-9);
            Assert.Equal(row.Number("d_same_different"), test.DPrime, 1e-4);
            Assert.NotNull(test.StandardError);
            Assert.Equal(row.Number("se_same_different"), test.StandardError.Value, 2e-3);
        }
    }

    /// <summary>A/not-A, 40 of 50 against 15 of 50: the sheet of check values.</summary>
    [Fact]
    public void A_not_A_equals_the_sheet_of_check_values()
    {
        var test = YesNoTest.Of(Protocol.ANotA, hits: 40, different: 50, falseAlarms: 15, alike: 50);
        Assert.Equal(1.36602175, test.DPrime, 5.1e-9);
        Assert.NotNull(test.StandardError);
        Assert.Equal(.27489946, test.StandardError.Value, 1e-7);
        Assert.Equal(25.252525, test.ChiSquare, 5.1e-7);
        Assert.Equal("40 of 50 noticed against 15 of 50 false alarms (A-not-A): a difference is shown at 5 % (p < 0.001); d-prime 1.37.",
            test.ToString());
    }

    [Fact]
    public void No_difference_shown_is_not_called_the_same()
    {
        var test = YesNoTest.Of(Protocol.ANotA, 9, 15, 9, 17);
        Assert.EndsWith("That does not mean the same.", test.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, YesNoTest.Of(Protocol.ANotA, 3, 10, 5, 10).DPrime);
        Assert.Equal(double.PositiveInfinity, YesNoTest.Of(Protocol.ANotA, 10, 10, 5, 10).DPrime);
    }

    [Fact]
    public void Impossible_tables_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => YesNoTest.Of(Protocol.ANotA, 11, 10, 5, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => YesNoTest.Of(Protocol.ANotA, 5, 10, 0, 0));
        Assert.Throws<ArgumentException>(() => YesNoTest.Of(Protocol.Triangle, 5, 10, 2, 10));
    }
}
