namespace SplitBatch.Kernel.Host;

/// <summary>The mistakes of someone who has not programmed before: each is answered in plain words beside the compiler's.</summary>
public sealed class CompilerHintTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Theory]
    [InlineData("var tasters = 24\nvar alpha = 0.05;",
        "A semicolon is missing at the end of this statement. Only the last line of a cell may go without one: its value is then shown.")]
    [InlineData("Power.TastersNeeded(Protocol.Triangle, alpha: 0.05, power: 0.80, discriminators: \"0.3\")",
        "A number belongs here and a text was given: write it without quotation marks, and decimals with a point, as 5.6.")]
    [InlineData("double margin = \"30 %\";",
        "A number belongs here and a text was given: write it without quotation marks, and decimals with a point, as 5.6.")]
    [InlineData("int tasters = 24.5;", "A whole number belongs here, as 24.")]
    [InlineData("Mass weighed = 50;", "A value with its unit belongs here, as Mass.FromGrams(50) or Mass.FromOunces(1.75).")]
    [InlineData("Trial.Open(5)", "A text belongs here and a number was given: put it in quotation marks, as \"cones\".")]
    [InlineData("Trial.Open(“my-trial”)",
        "This character cannot stand here. Curly quotation marks are often the cause: write straight ones, as \"cones\".")]
    [InlineData("Trial.Open(\"my-trial)", "A text is opened with a quotation mark and not closed on the same line.")]
    [InlineData("Math.Sqrt(2", "A closing parenthesis ) is missing.")]
    [InlineData("trail.Verdict()",
        "Nothing of this name is known. Look at the spelling, capitals included, and whether the cell that makes it was run. Did you "
        + "mean Trial?")]
    [InlineData("Protocol.Triangel",
        "There is nothing of this name in there. Type the point and press Tab to see what there is. Did you mean Triangle?")]
    [InlineData("new PanelPlan(Protocol.Triangle, 24).Chrat()",
        "There is nothing of this name in there. Type the point and press Tab to see what there is. Did you mean Chart?")]
    [InlineData("Trial.Open('my-trial')", "Single quotation marks hold one letter only: write texts with double ones, as \"cones\".")]
    [InlineData("var tasters = ;",
        "Something is missing before this place, or too much stands there: often a value that was left out, or a comma or parenthesis "
        + "too many.")]
    [InlineData("Mass.FromGrams(50) + 5",
        "These two cannot be calculated with each other as they stand: a value with a unit needs another with a unit, and a text is no "
        + "number.")]
    [InlineData("Protocol.Triangle()", "This is a value and not a call: leave out the parentheses, as trial.Title.")]
    [InlineData("Protocol.Triangle.Name.Length = 5;",
        "A result is not changed once it is made: make the change in the trial's files, or build a new value.")]
    [InlineData("Math.Sqrt(5,6)",
        "This call takes another number of arguments. In code a decimal is written with a point: 5.6 is one number, 5,6 are two.")]
    [InlineData("Power.TastersNeeded(Protocol.Triangle, alfa: 0.05, power: 0.80, discriminators: 0.3)",
        "This call takes no argument of this name. Put the cursor into the parentheses and press Shift+Tab to see the names.")]
    [InlineData("Power.TastersNeeded(Protocol.Triangle, 0.05)",
        "An argument is missing. Put the cursor into the parentheses and press Shift+Tab to see what is needed.")]
    public async Task A_mistake_gets_the_compilers_message_and_a_plain_one(string code, string hint)
    {
        var (result, _) = await kernel.Run(code);
        Assert.Equal("CompilationError", result.Error!.Name);
        Assert.Matches("^line 1, column [0-9]+: CS[0-9]{4}: ", result.Error.Traceback[0]);
        Assert.Contains("  " + hint, result.Error.Traceback);
    }

    [Fact]
    public async Task A_hint_is_given_once_however_often_the_mistake_is_made()
    {
        var (result, _) = await kernel.Run("var a = trail.Title; var b = trail.Title;");
        Assert.Single(result.Error!.Traceback, line => line.StartsWith("  Nothing of this name", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_variable_of_an_earlier_cell_that_is_misspelt_is_answered_with_the_nearest()
    {
        await kernel.Run("var uncertainty = 5;");
        var (result, _) = await kernel.Run("uncertanty + 1");
        Assert.Contains(
            "  Nothing of this name is known. Look at the spelling, capitals included, and whether the cell that makes it was run. Did "
            + "you mean uncertainty?", result.Error!.Traceback);
    }

    [Fact]
    public async Task A_misspelt_lot_is_answered_with_the_nearest()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder!.FullName, "data-demo"))) folder = folder.Parent;
        var (result, _) =
            await kernel.Run($"Trial.Open(@\"{Path.Combine(folder.FullName, "data-demo", "amber-cone-or-pellet")}\").Lot(\"pelets\")");
        Assert.StartsWith("This trial has no hop lot \"pelets\"; there are: cones, pellets. Did you mean \"pellets\"?",
            result.Error!.Message, StringComparison.Ordinal);
    }
}
