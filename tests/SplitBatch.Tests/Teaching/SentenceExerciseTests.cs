namespace SplitBatch.Teaching;

public class SentenceExerciseTests
{
    [Theory]
    [InlineData(
        "Eight of eighteen tasters picked the odd cup; no difference was shown, but the panel was too small to rule out one that "
            + "matters.")]
    [InlineData("With 8 right of 18, the panel did not show a difference, and up to 49 % may still tell the beers apart.")]
    [InlineData("8 of 18 answers were right, which is not a sign that the beers are the same, and leaves the question open.")]
    public void An_honest_sentence_about_a_small_panel_passes(string sentence) =>
        Assert.Equal(Slip.None, OneHonestSentence.SmallPanel.Check(sentence).Slip);

    [Theory]
    [InlineData("Eight of eighteen were right, so the beers taste the same.", Slip.SaysTheSame)]
    [InlineData("With 8 of 18 right, the panel did not find a difference and the beers are identical.", Slip.SaysTheSame)]
    [InlineData("There is no difference between the beers: 8 of 18 were right.", Slip.SaysTheSame)]
    [InlineData("8 of 18 right proves that hop form does not matter for this beer.", Slip.SaysProven)]
    [InlineData("8 of 18 right means that nobody can taste which hops were used.", Slip.SaysEverybody)]
    [InlineData("8 of 18 were right, so pellets are the better choice for this beer.", Slip.SaysBetter)]
    [InlineData("Eight of eighteen tasters could tell the beers apart in a blind triangle.", Slip.ClaimsADifference)]
    [InlineData("The panel showed no difference, and one that matters is not ruled out.", Slip.NoCount)]
    [InlineData("Of 18 tasters in a blind triangle test 8 picked the odd cup.", Slip.NoLimit)]
    [InlineData("8 of 18, still open.", Slip.NotOneSentence)]
    [InlineData("", Slip.Unanswered)]
    [InlineData(null, Slip.Unanswered)]
    public void A_sentence_about_a_small_panel_that_says_too_much_or_too_little_is_told_why(string? sentence, Slip slip) =>
        Assert.Equal(slip, OneHonestSentence.SmallPanel.Check(sentence).Slip);

    [Theory]
    [InlineData("15 of 24 picked the odd cup, more than guessing gives in one panel of twenty: a difference is shown.", Slip.None)]
    [InlineData("Fifteen of twenty-four tasters were right, so some of them can tell the beers apart.", Slip.None)]
    [InlineData("15 of 24 picked the odd cup, which is interesting and deserves another panel.", Slip.HidesTheDifference)]
    [InlineData("15 of 24 were right, which confirms that the beers are different.", Slip.SaysProven)]
    [InlineData("15 of 24 were right, so everybody notices the difference between them.", Slip.SaysEverybody)]
    public void A_sentence_about_a_clear_panel_may_say_that_a_difference_is_shown(string sentence, Slip slip) =>
        Assert.Equal(slip, OneHonestSentence.ClearPanel.Check(sentence).Slip);

    [Theory]
    [InlineData("20 of 60 were right: no difference was shown, and 30 % or more who can tell are ruled out.", Slip.None)]
    [InlineData("Twenty of sixty were right, so the beers are indistinguishable to drinkers.", Slip.SaysTheSame)]
    [InlineData("20 of 60 tasters were right and no difference was shown by this panel.", Slip.NoLimit)]
    [InlineData("A third of 60 tasters were right; three in ten who can tell are ruled out.", Slip.NoCount)]
    public void A_sentence_about_a_large_panel_may_rule_the_margin_out(string sentence, Slip slip) =>
        Assert.Equal(slip, OneHonestSentence.LargePanel.Check(sentence).Slip);

    [Fact]
    public void The_three_panels_have_three_different_answers() => Assert.Equal(
        [Panel.Deciding.PanelAnswer.Inconclusive, Panel.Deciding.PanelAnswer.DifferenceShown, Panel.Deciding.PanelAnswer.MarginRuledOut],
        new[] { OneHonestSentence.SmallPanel, OneHonestSentence.ClearPanel, OneHonestSentence.LargePanel }
            .Select(exercise => exercise.Reading.Answer));

    /// <summary>The tool must not fail its own exercise.</summary>
    [Fact]
    public void The_tools_own_words_about_each_panel_claim_no_more_than_they_may()
    {
        SentenceExercise[] all = [OneHonestSentence.SmallPanel, OneHonestSentence.ClearPanel, OneHonestSentence.LargePanel];
        Assert.All(all,
            exercise => Assert.Contains(exercise.Check(exercise.Reading.ToString()).Slip, new[] { Slip.None, Slip.NotOneSentence }));
    }
}
