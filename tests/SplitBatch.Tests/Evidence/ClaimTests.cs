namespace SplitBatch.Evidence;

public class ClaimTests
{
    [Fact]
    public void A_claim_keeps_the_numbers_of_its_sentence_unrounded()
    {
        var claim = new Claim("lab.difference", $"The difference is {2.0 / 3:0.0} IBU in {4} readings of beer {Side.B}.", "difference of means", "lab-returns.csv");
        Assert.Equal("The difference is 0.7 IBU in 4 readings of beer B.", claim.Sentence);
        Assert.Equal([2.0 / 3, 4], claim.Numbers);
    }

    [Fact]
    public void A_number_written_into_the_sentence_is_refused() =>
        Assert.Contains("digit 7", Assert.Throws<ArgumentException>(() => new Claim("x", $"About 7 of {20} were right.", "count")).Message, StringComparison.Ordinal);
}
