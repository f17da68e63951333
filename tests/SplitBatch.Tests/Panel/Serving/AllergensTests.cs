namespace SplitBatch.Panel.Serving;

public class AllergensTests
{
    [Fact]
    public void What_is_in_the_beers_is_said_in_a_tasters_words() => Assert.Equal(
        "barley (gluten), oats (gluten), lactose (milk sugar), sulphite, fish finings, fruit, honey",
        Allergens.Of("barley", "Oats", "lactose", "sulphite", "fish finings", "fruit", "other: honey").ToString());

    [Fact]
    public void None_but_barley_has_to_be_said_and_then_says_so()
    {
        var only = Allergens.Parse(" none but barley ");
        Assert.True(only.NothingElse);
        Assert.Equal("barley (gluten); nothing else that commonly causes allergies", only.ToString());
        Assert.False(Allergens.Of("barley").NothingElse);
    }

    [Theory]
    [InlineData("lactos", "\"lactos\" is not among the allergens known here.", "Did you mean \"lactose\"?")]
    [InlineData("none but barley, nuts", "\"none but barley\" stands beside nuts; only one of them can be true.",
        "Accepted: barley, wheat, rye, oats, spelt, lactose, nuts, sulphite, fish finings, fruit, none but barley, other: and the name")]
    [InlineData("other:", "After \"other:\" the allergen itself is missing.", "Accepted: barley")]
    [InlineData("", "Nothing is named; if there is only barley, say so.", "none but barley")]
    public void What_cannot_be_used_is_answered_with_what_is_accepted(string words, string problem, string help)
    {
        var message = Assert.Throws<ArgumentException>(() => Allergens.Parse(words)).Message;
        Assert.StartsWith(problem, message, StringComparison.Ordinal);
        Assert.Contains(help, message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_words_come_back_as_they_were_given() =>
        Assert.Equal(["Lactose", "other: honey"], Allergens.Parse("Lactose, other: honey").Words);
}
