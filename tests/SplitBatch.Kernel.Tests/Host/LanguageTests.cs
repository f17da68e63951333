using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

public class LanguageTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task Completions_start_with_what_is_typed_and_hold_no_snippets()
    {
        var found = await kernel.Host.CompleteAsync("var x = Math.Ab", 15);
        Assert.Equal((13, 15), (found.Start, found.End));
        Assert.Equal("Abs", Assert.Single(found.Items).Text);
    }

    [Fact]
    public async Task Variables_of_earlier_cells_complete()
    {
        await kernel.Run("var amberAle = 1;");
        Assert.Equal("amberAle", (await kernel.Host.CompleteAsync("amb", 3)).Items[0].Text);
    }

    [Fact]
    public async Task The_library_explains_itself()
    {
        var found = await kernel.Host.InspectAsync("Gravity.FromPlato(12)", 12);
        Assert.Contains("FromPlato", found!.Forms["text/plain"], StringComparison.Ordinal);
        Assert.Null(await kernel.Host.InspectAsync("   ", 1));
    }

    [Theory]
    [InlineData("1 + 1", Completeness.Complete)]
    [InlineData("var a = 1;", Completeness.Complete)]
    [InlineData("if (true) {", Completeness.Incomplete)]
    [InlineData("\"abc", Completeness.Incomplete)]
    [InlineData("}", Completeness.Invalid)]
    [InlineData("int x 5;", Completeness.Invalid)]
    public void Completeness_is_told(string code, Completeness expected) => Assert.Equal(expected, kernel.Host.IsComplete(code));
}
