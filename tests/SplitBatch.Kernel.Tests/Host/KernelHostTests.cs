using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

public class KernelHostTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task The_value_that_ends_a_cell_is_its_result()
    {
        var (result, outputs) = await kernel.Run("1 + 1");
        Assert.Equal(CellResult.Success, result);
        var value = Assert.IsType<ValueOutput>(Assert.Single(outputs));
        Assert.Equal(new("text/plain", "2"), Assert.Single(value.Data.Forms));
    }

    [Fact]
    public async Task The_library_and_units_are_there_before_the_first_cell() =>
        Assert.Equal("12.4", await kernel.Value("Math.Round(Gravity.FromPlato(12.4).Plato, 4)"));

    [Theory]
    [InlineData("Mass.FromGrams(40.5)", "40.5 g")]
    [InlineData("0.1 + 0.2", "0.30000000000000004")]
    [InlineData("\"cones\"", "cones")]
    [InlineData("new TimeOnly(18, 30)", "18:30:00")]
    [InlineData("new DateOnly(2026, 3, 1)", "2026-03-01")]
    public async Task Simple_values_show_as_one_line_of_plain_text(string code, string text)
    {
        var (_, outputs) = await kernel.Run(code);
        Assert.Equal(new("text/plain", text), Assert.Single(Assert.IsType<ValueOutput>(Assert.Single(outputs)).Data.Forms));
    }

    [Fact]
    public async Task A_failed_cell_keeps_earlier_variables_and_its_own()
    {
        await kernel.Run("var kept = 1;");
        var (result, outputs) = await kernel.Run("var own = 2;\nthrow new InvalidOperationException(\"no wort\");");
        Assert.Equal("InvalidOperationException", result.Error!.Name);
        Assert.Equal("no wort", result.Error.Message);
        Assert.Equal(["InvalidOperationException: no wort", "   at the cell, line 2"], result.Error.Traceback);
        Assert.Empty(outputs);
        Assert.Equal("3", await kernel.Value("kept + own"));
    }

    [Fact]
    public async Task A_cell_that_does_not_compile_says_line_and_column()
    {
        var (result, outputs) = await kernel.Run("var a = 1;\nvar b = nothing + 1;");
        Assert.Equal("CompilationError", result.Error!.Name);
        Assert.StartsWith("line 2, column 9: CS0103", result.Error.Message, StringComparison.Ordinal);
        Assert.Equal(["    var b = nothing + 1;", "            ^"], result.Error.Traceback.Skip(1).Take(2));
        Assert.Empty(outputs);
    }

    [Fact]
    public async Task Console_text_comes_in_order_by_stream_and_joined()
    {
        var (_, outputs) =
            await kernel.Run(
            "for (var i = 0; i < 100; i++) Console.Write(i + \" \");\nConsole.Error.WriteLine(\"oops\");\nConsole.WriteLine(\"end\");\n7");
        Assert.Collection(
            outputs,
            o => Assert.Equal(new TextOutput(string.Concat(Enumerable.Range(0, 100).Select(i => i + " "))), o),
            o => Assert.Equal(new TextOutput("oops" + Environment.NewLine, IsError: true), o),
            o => Assert.Equal(new TextOutput("end" + Environment.NewLine), o),
            o => Assert.Equal("7", HostFixture.Text(Assert.IsType<ValueOutput>(o))));
    }

    [Fact]
    public async Task A_display_is_updated_under_its_own_id_even_from_a_later_cell()
    {
        var (_, first) = await kernel.Run("var shown = display(\"one\");\nshown.Update(\"two\");");
        var id = Assert.IsType<DisplayOutput>(first[0]).DisplayId;
        var update = Assert.IsType<DisplayUpdate>(first[1]);
        Assert.Equal((id, "two"), (update.DisplayId, HostFixture.Text(update)));
        var (_, second) = await kernel.Run("shown.Update(3);");
        Assert.Equal((id, "3"), (Assert.IsType<DisplayUpdate>(Assert.Single(second)).DisplayId, HostFixture.Text(second[0])));
    }

    [Fact]
    public async Task Input_is_asked_for_and_answered()
    {
        var sink = new ListSink("42");
        await kernel.Host.ExecuteAsync("var a = await GetInputAsync(\"How many?\");\nvar b = Console.ReadLine();\na + b", sink);
        Assert.Equal([("How many?", false), ("", false)], sink.Asked);
        Assert.Equal("4242", HostFixture.Text(Assert.Single(sink.Outputs)));
    }

    [Fact]
    public async Task Input_with_nobody_there_is_an_error_and_not_a_wait()
    {
        var (result, _) = await kernel.Run("await GetInputAsync(\"How many?\")");
        Assert.Contains("Nobody is there to answer", result.Error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_background_task_that_outlives_its_cell_still_writes_to_it()
    {
        var late = new TaskCompletionSource<CellOutput>();
        var first = new ListSink { OnPublish = o => late.TrySetResult(o) };
        await kernel.Host.ExecuteAsync("_ = Task.Run(async () => { await Task.Delay(100); Console.WriteLine(\"late\"); });", first);
        await kernel.Run("2");
        var output = await late.Task.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.Equal(new TextOutput("late" + Environment.NewLine), output);
    }

    [Fact]
    public async Task An_error_below_the_cell_names_the_functions_on_the_way_and_no_folder()
    {
        await kernel.Run("double Half(double x)\n{\n    return x > 0 ? x / 2 : throw new ArgumentException(\"not above zero\");\n}");
        var (result, _) = await kernel.Run("\nHalf(-1)");
        Assert.Equal(["ArgumentException: not above zero", "   at Half(Double x), line 3 of its cell", "   at the cell, line 2"],
            result.Error!.Traceback);
        var (library, _) = await kernel.Run("Gravity.FromPlato(-400)");
        Assert.DoesNotContain(library.Error!.Traceback, line =>
            line.Contains("/src/", StringComparison.Ordinal) || line.Contains("\\src\\", StringComparison.Ordinal));
        Assert.EndsWith("at the cell, line 1", library.Error.Traceback[^1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_data_frame_shows_as_a_table_and_a_chart_in_all_its_forms()
    {
        var (_, table) = await kernel.Run("new DataFrame(new DoubleDataFrameColumn(\"alpha [%]\", [6.8, 8.3]))");
        Assert.Contains("<table", Assert.IsType<ValueOutput>(Assert.Single(table)).Data.Forms["text/html"], StringComparison.Ordinal);
        var (_, chart) =
            await kernel.Run("Plotly.NET.CSharp.Chart.Column<double, string, string>(values: [1.0, 2.0], Keys: new[] { \"A\", \"B\" })");
        var forms = Assert.IsType<ValueOutput>(Assert.Single(chart)).Data.Forms;
        Assert.True(forms.ContainsKey("application/vnd.plotly.v1+json"));
        Assert.DoesNotContain("cdn", forms["text/html"], StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Two_kernels_share_no_variables_and_no_output()
    {
        await using var other = new KernelHost();
        await kernel.Run("var mine = 1;");
        var here = new ListSink();
        var there = new ListSink();
        await Task.WhenAll(
            kernel.Host.ExecuteAsync("for (var i = 0; i < 20; i++) { Console.Write(\"a\"); await Task.Delay(2); }", here),
            other.ExecuteAsync("for (var i = 0; i < 20; i++) { Console.Write(\"b\"); await Task.Delay(2); }", there));
        Assert.Equal(new string('a', 20), string.Concat(here.Outputs.Select(HostFixture.Text)));
        Assert.Equal(new string('b', 20), string.Concat(there.Outputs.Select(HostFixture.Text)));
        Assert.Contains("CS0103", (await other.ExecuteAsync("mine", there)).Error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_code_that_fails_is_told_with_its_error()
    {
        await using var wrong = new KernelHost(new KernelHostOptions { StartCode = "nonsense" });
        var error = await Assert.ThrowsAsync<InvalidOperationException>(() => wrong.StartAsync());
        Assert.Contains("CS0103", error.Message, StringComparison.Ordinal);
    }
}
