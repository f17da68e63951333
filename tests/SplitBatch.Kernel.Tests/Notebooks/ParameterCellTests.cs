namespace SplitBatch.Kernel.Notebooks;

public class ParameterCellTests
{
    private static Notebook WithParameters() => Notebook.Parse(NotebookText.Of(
        NotebookText.Code(
            "// change these\nvar tasters = 24;\nvar share = 0.30;\nstring name = \"amber\";\nvar blind = true;\nvar low = -5;\nvar "
            + "day = new DateOnly(2026, 3, 1);", "parameters"),
        NotebookText.Code("tasters")));

    [Theory]
    [InlineData("tasters", "36", "tasters = 36;")]
    [InlineData("share", "0.25", "share = 0.25;")]
    [InlineData("share", "1", "share = 1.0;")]
    [InlineData("name", "say \"hi\" \\ now", "name = \"say \\\"hi\\\" \\\\ now\";")]
    [InlineData("blind", "False", "blind = false;")]
    [InlineData("low", "-7", "low = -7;")]
    [InlineData("day", "new DateOnly(2026, 4, 2)", "day = new DateOnly(2026, 4, 2);")]
    public void A_value_goes_into_a_cell_after_the_parameters(string name, string value, string expected)
    {
        var notebook = WithParameters();
        ParameterCell.Find(notebook)!.Inject(new Dictionary<string, string> { [name] = value });
        Assert.Equal(3, notebook.Cells.Count);
        Assert.Equal(["injected-parameters"], notebook.Cells[1].Tags);
        Assert.Equal(expected, notebook.Cells[1].Source.Split('\n')[1]);
        Assert.Equal("injected-parameters", notebook.Cells[1].Id);
        Assert.Equal(2, notebook.Cells[2].Number);
    }

    [Theory]
    [InlineData("tasters", "24.5", "a whole number")]
    [InlineData("tasters", "1; Quit()", "a whole number")]
    [InlineData("share", "30 %", "a number with a decimal point")]
    [InlineData("share", "0,3", "a number with a decimal point")]
    [InlineData("blind", "yes", "true or false")]
    [InlineData("day", "(", "a C# expression")]
    public void A_value_of_another_kind_is_refused_with_what_is_accepted(string name, string value, string accepted)
    {
        var error =
            Assert.Throws<NotebookException>(() =>
            ParameterCell.Find(WithParameters())!.Inject(new Dictionary<string, string> { [name] = value }));
        Assert.Contains($"\"{name}\" cannot be \"{value}\"; accepted: {accepted}", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_name_is_refused_with_the_names_there_are()
    {
        var error =
            Assert.Throws<NotebookException>(() =>
            ParameterCell.Find(WithParameters())!.Inject(new Dictionary<string, string> { ["taster"] = "1" }));
        Assert.Equal("There is no parameter \"taster\"; the parameters cell has: blind, day, low, name, share, tasters.", error.Message);
    }

    [Fact]
    public void Values_of_an_earlier_run_are_replaced()
    {
        var notebook = WithParameters();
        ParameterCell.Find(notebook)!.Inject(new Dictionary<string, string> { ["tasters"] = "36" });
        ParameterCell.Find(notebook)!.Inject(new Dictionary<string, string> { ["name"] = "dark" });
        Assert.Equal("// Given when the notebook was run\nname = \"dark\";", notebook.Cells[1].Source);
        Assert.Equal(3, notebook.Cells.Count);
    }

    [Fact]
    public void A_notebook_without_the_tag_has_no_parameters() =>
        Assert.Null(ParameterCell.Find(Notebook.Parse(NotebookText.Of(NotebookText.Code("var a = 1;")))));
}
