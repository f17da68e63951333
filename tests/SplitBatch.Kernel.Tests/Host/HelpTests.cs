namespace SplitBatch.Kernel.Host;

/// <summary>What a brewer reads on hover and within the parentheses of a call: a summary, units or ranges, and an example.</summary>
public sealed class HelpTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Theory]
    [InlineData("Trial.|Open(\"my-trial\")", "Opens a trial folder and reads it as a whole.",
        "Example: var trial = Trial.Open(\"my-trial\");")]
    [InlineData("Power.|TastersNeeded(Protocol.Triangle, 0.05, 0.8, 0.3)", "The number of tasters needed to show a difference.",
        "Example: Power.TastersNeeded(Protocol.Triangle, alpha: 0.05, power: 0.80, discriminators: 0.30)")]
    [InlineData("ServingPlan.|Balanced(Protocol.Triangle, 24, 1)", "",
        "Example: ServingPlan.Balanced(Protocol.Triangle, tasters: 24, seed: 2026)")]
    [InlineData("SimilarityTest.|Of(Protocol.Triangle, 60, 20, 0.3)", "",
        "Example: SimilarityTest.Of(Protocol.Triangle, tasters: 60, correct: 20, margin: 0.30)")]
    [InlineData("Gravity.|FromPlato(12)", "From degrees Plato.", "Example: Gravity.FromPlato(12.4)")]
    [InlineData("TrialReport.|Of(null)", "The write-up as far as the trial's folder allows it.",
        "Example: TrialReport.Of(trial).SaveTo(\"my-trial/write-up\")")]
    [InlineData("PastTrials.|In(\"x\")", "", "Example: PastTrials.In(\"my-trials\")")]
    public async Task On_hover(string code, string summary, string example)
    {
        var text = await Help(code);
        Assert.Contains(summary, text, StringComparison.Ordinal);
        Assert.EndsWith(example, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Power.TastersNeeded(|", "discriminators: The true share of discriminators, above 0 and at most 1.",
        "Example: Power.TastersNeeded(")]
    [InlineData("ServingPlan.Balanced(|", "tasters: How many people taste, in [1, 1000].", "Example: ServingPlan.Balanced(")]
    [InlineData("Gravity.FromPlato(|", "plato: Degrees Plato in [0, 42].", "Example: Gravity.FromPlato(12.4)")]
    [InlineData("ChargeMatch.Solve(|", "target: Bitterness aimed at, in IBU, above 0 and at most 150.", "Example: ChargeMatch.Solve(")]
    public async Task Within_the_parentheses(string code, string parameter, string example)
    {
        var text = await Help(code);
        Assert.Contains(parameter, text, StringComparison.Ordinal);
        Assert.Contains(example, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_keeps_its_lines_where_it_is_shown_as_Markdown()
    {
        var found = await kernel.Host.InspectAsync("AlphaAcid.FromPercent(", "AlphaAcid.FromPercent(".Length);
        Assert.StartsWith("```csharp\nAlphaAcid AlphaAcid.FromPercent(double percent)\n```\n\nFrom percent by weight",
            found!.Forms["text/markdown"], StringComparison.Ordinal);
        Assert.Contains("\n\npercent: Percent in [0, 90]", found.Forms["text/markdown"], StringComparison.Ordinal);
        Assert.Equal(4, found.Forms["text/plain"].Split('\n').Length);
        Assert.DoesNotContain('\r', found.Forms["text/plain"] + found.Forms["text/markdown"]);
    }

    [Theory]
    [InlineData("Power.", "TastersNeeded")]
    [InlineData("new PanelPlan(Protocol.Triangle, 24).", "Chart")]
    [InlineData("DifferenceTest.Of(Protocol.Triangle, 24, 11).", "Table")]
    [InlineData("Protocol.", "Triangle")]
    [InlineData("Trial.", "WorkOn")]
    public async Task After_a_point_there_is_what_one_needs(string code, string name) =>
        Assert.Contains((await kernel.Host.CompleteAsync(code, code.Length)).Items, item => item.Text == name);

    [Fact]
    public async Task What_a_cell_returns_is_one_line_and_its_details_are_a_call_away()
    {
        Assert.Equal(
            "triangle: 40 tasters to show a difference when 30 % are discriminators (error 5 %, power 80 %); power rises in a saw-tooth, "
                + "and from 42 "
            + "on it is always reached.",
            (await kernel.Value("var needed = Power.TastersNeeded(Protocol.Triangle, 0.05, 0.80, 0.30);\nneeded")).Trim());
        Assert.Equal("40", (await kernel.Value("needed.First")).Trim());
    }

    private async Task<string> Help(string marked)
    {
        var at = marked.IndexOf('|', StringComparison.Ordinal);
        var found = await kernel.Host.InspectAsync(marked.Remove(at, 1), at);
        return found!.Forms["text/plain"];
    }
}
