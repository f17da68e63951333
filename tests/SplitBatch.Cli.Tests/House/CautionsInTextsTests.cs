namespace SplitBatch.Cli.House;

/// <summary>Texts that are not made by a program repeat the one reviewed set of cautions word for word.</summary>
public class CautionsInTextsTests
{
    [Fact]
    public void The_notebooks_README_holds_every_caution()
    {
        var text = File.ReadAllText(Repository.Path("notebooks", "README.md"));
        Assert.All(Cautions.All, caution => Assert.Contains(caution.ToMarkdown(), text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_workshops_guide_holds_those_of_a_tasting_and_of_a_brew()
    {
        var text = File.ReadAllText(Repository.Path("notebooks", "workshop", "README.md"));
        Caution[] whole = [Cautions.AtTheTasting, Cautions.WithPeoplesAnswers, Cautions.InTheCellar];
        Assert.All(whole, caution => Assert.Contains(caution.ToMarkdown(), text, StringComparison.Ordinal));
        Assert.All(Cautions.AtTheKettle.Sentences, sentence => Assert.Contains(sentence, text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("notebooks/1-design.ipynb", "Cautions.AtTheTasting")]
    [InlineData("notebooks/1-design.ipynb", "Cautions.WithPeoplesAnswers")]
    [InlineData("notebooks/2-hop-charges.ipynb", "Cautions.AtTheKettle")]
    [InlineData("notebooks/2-hop-charges.ipynb", "Cautions.InTheCellar")]
    [InlineData("notebooks/2-hop-charges.ipynb", "Cautions.WhenCleaning")]
    [InlineData("notebooks/3-lab-return.ipynb", "Cautions.InTheLaboratory")]
    [InlineData("notebooks/workshop/4-equal-bitterness.ipynb", "Cautions.AtTheKettle")]
    [InlineData("notebooks/workshop/5-read-this-return.ipynb", "Cautions.InTheLaboratory")]
    [InlineData("notebooks/workshop/7-live-tally.ipynb", "Cautions.AtTheTasting")]
    public void A_notebook_prints_the_caution_of_its_step(string notebook, string cell) =>
        Assert.Contains($"\"{cell}\"", File.ReadAllText(Repository.Path(notebook.Split('/'))), StringComparison.Ordinal);
}
