using SplitBatch.Evidence.Findings;
using SplitBatch.Evidence.Phrases;

namespace SplitBatch.Evidence;

public class ClaimTests
{
    [Fact]
    public void A_claim_keeps_the_numbers_of_its_sentence_unrounded()
    {
        var claim = new Claim("lab.difference",
            $"The difference is {Printed.Bitterness(2.0 / 3, "IBU")} in {Printed.Count(4, "reading")} of half {Side.B}.",
            "difference of means", "lab-returns.csv");
        Assert.Equal("The difference is 0.7 IBU in 4 readings of half B.", claim.Sentence);
        Assert.Equal([2.0 / 3, 4], claim.Numbers);
        Assert.Equal(["lab-returns.csv"], claim.Sources);
        Assert.Null(claim.Finding);
    }

    [Fact]
    public void A_number_written_into_the_words_is_refused() =>
        Assert.Contains("digit 7",
            Assert.Throws<ArgumentException>(() => new Claim("x", $"About 7 of {Printed.Count(20)} were right.", "count")).Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_number_in_one_of_several_wordings_is_refused() =>
        Assert.Contains("digit 2", Assert.Throws<ArgumentException>(() => Sentence.Of($"It took {"2 tasters"}.")).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Digits_of_a_name_are_no_numbers_and_those_of_a_quotation_are()
    {
        var sentence = Sentence.Of($"By {new Name("3-AFC")}: {new Quote("19.5 ± 0.3 °C on 2026-04-20 by T17")}.");
        Assert.Equal("By 3-AFC: 19.5 ± 0.3 °C on 2026-04-20 by T17.", sentence.Text);
        Assert.Equal([19.5, 0.3], sentence.Numbers);
    }

    [Fact]
    public void Sentences_follow_one_another_and_keep_their_numbers()
    {
        var two = Sentence.Of($"{Printed.Count(1)}.") + Sentence.Of($"{Printed.Count(2)}.");
        Assert.Equal(("1. 2.", "1. 2."), (two.Text, (two + Sentence.Empty).Text));
        Assert.Equal([1, 2], Sentence.Join(Sentence.Empty, two, Sentence.Empty).Numbers);
        Assert.Equal([1, 2, 3], Sentence.Of($"{two} {Printed.Count(3)}").Numbers);
    }

    [Theory]
    [InlineData("panel.main.difference", "panel", "main", "difference")]
    [InlineData("panel.[main.2].difference", "panel", "main.2", "difference")]
    [InlineData("panel.[a]]b].count", "panel", "a]b", "count")]
    [InlineData("limit.confound.fermentation temperature", "limit", "confound", "fermentation temperature")]
    public void A_finding_s_name_is_unambiguous_whatever_the_panel_is_called(string text, params string[] words) =>
        Assert.Equal(text, FindingId.Of(words).Text);

    [Fact]
    public void A_name_without_words_or_with_a_blank_one_is_refused()
    {
        Assert.Throws<ArgumentException>(() => FindingId.Of());
        Assert.Throws<ArgumentException>(() => FindingId.Of("panel", " "));
    }
}
