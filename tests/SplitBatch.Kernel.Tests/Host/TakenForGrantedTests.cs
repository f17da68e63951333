using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

/// <summary>What people who know .NET notebooks expect to find.</summary>
public sealed class TakenForGrantedTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task A_variable_with_using_lives_until_the_end_of_its_cell()
    {
        Assert.Equal("True", await kernel.Value("using var stream = new MemoryStream(); stream.CanRead"));
        Assert.Equal("False", await kernel.Value("stream.CanRead"));
    }

    [Fact]
    public async Task Extension_methods_can_be_written_as_in_a_file()
    {
        await kernel.Run("static class More\n{\n    public static int Twice(this int x) => 2 * x;\n}");
        Assert.Equal("8", await kernel.Value("4.Twice()"));
        await kernel.Run("static class More\n{\n    public static int Twice(this int x) => 20 * x;\n}");
        Assert.Equal("80", await kernel.Value("4.Twice()"));
    }

    [Fact]
    public async Task A_cell_says_how_long_it_took()
    {
        var (_, outputs) = await kernel.Run("#!time\n1 + 1");
        Assert.Contains(outputs, output => HostFixture.Text(output).StartsWith("The cell took ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("new double[,] { { 1, 2 }, { 3, 4.5 } }", "1  2\n3  4.5", "<tr><td>1</td><td>2</td></tr><tr><td>3</td><td>4.5</td></tr>")]
    [InlineData("MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(1, 2, 0.5)", "0.5  0.5", "<tr><td>0.5</td><td>0.5</td></tr>")]
    [InlineData("record Jar(string Name, double Litres); new[] { new Jar(\"<a>\", 1.5), new Jar(\"b\", 20) }",
        "Name  Litres\n<a>   1.5\nb     20",
        "<tr><th>Name</th><th>Litres</th></tr></thead><tbody><tr><td>&lt;a&gt;</td><td>1.5</td></tr>")]
    public async Task Matrices_and_things_of_one_kind_are_tables(string code, string plain, string html)
    {
        var (_, outputs) = await kernel.Run(code);
        var forms = Assert.IsType<ValueOutput>(Assert.Single(outputs)).Data.Forms;
        Assert.Equal(plain, forms["text/plain"]);
        Assert.Contains(html, forms["text/html"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("typeof(Dictionary<string, List<int?>>)", "Dictionary<string, List<int?>>")]
    [InlineData("typeof((int, string)[])", "(int, string)[]")]
    [InlineData("new { Lot = 1 }.GetType()", "{ int Lot }")]
    public async Task Types_are_named_as_they_are_written(string code, string name) => Assert.Equal(name, await kernel.Value(code));

    [Theory]
    [InlineData("var text = \"\"\"", Completeness.Incomplete)]
    [InlineData("var text = \"\"\"\n  a", Completeness.Incomplete)]
    [InlineData("var text = \"\"\"\n  a\n  \"\"\";", Completeness.Complete)]
    public void A_raw_text_goes_on_until_it_is_closed(string code, Completeness expected) =>
        Assert.Equal(expected, kernel.Host.IsComplete(code));

    [Fact]
    public async Task Help_answers_while_a_cell_runs()
    {
        var begun = new TaskCompletionSource();
        var cell =
            kernel.Host.ExecuteAsync("display(1); await Task.Delay(600_000);", new ListSink { OnPublish = _ => begun.TrySetResult() });
        await begun.Task;
        Assert.Contains((await kernel.Host.CompleteAsync("Math.Sq", 7)).Items, item => item.Text == "Sqrt");
        Assert.False(cell.IsCompleted);
        await kernel.Host.InterruptAsync();
        Assert.True((await cell).Interrupted);
    }

    [Theory]
    [InlineData("Simulate.Tastings(Protocol.Triangle, 1.0, 900_000_000_000, seed: 1)")]
    [InlineData("Simulate.Panels(Protocol.Triangle, 1000, 100_000_000, seed: 1)")]
    public async Task A_long_call_of_the_library_is_stopped(string code)
    {
        var begun = new TaskCompletionSource();
        var cell = kernel.Host.ExecuteAsync($"display(1); {code}", new ListSink { OnPublish = _ => begun.TrySetResult() });
        await begun.Task;
        await Task.Delay(500);
        Assert.True(await kernel.Host.InterruptAsync());
        Assert.Equal("The cell was interrupted. Variables of earlier cells are kept.", (await cell).Error!.Message);
    }
}
