namespace SplitBatch.Kernel.Host;

public class KernelHostTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task The_value_that_ends_a_cell_is_its_result()
    {
        var (result, outputs) = await kernel.Run("1 + 1");
        Assert.Equal(CellStatus.Ok, result.Status);
        var value = Assert.IsType<ResultOutput>(Assert.Single(outputs));
        Assert.Equal("text/plain", Assert.Single(value.Data.Forms).Key);
        Assert.Equal("2", value.Data["text/plain"]);
    }

    [Fact]
    public async Task The_library_and_units_are_there_before_the_first_cell() =>
        Assert.Equal("12.4", await kernel.Value("Math.Round(Gravity.FromPlato(12.4).Plato, 4)"));

    [Fact]
    public async Task A_failed_cell_keeps_earlier_variables_and_its_own()
    {
        await kernel.Run("var kept = 1;");
        var (result, outputs) = await kernel.Run("var own = 2;\nthrow new InvalidOperationException(\"no wort\");");
        Assert.Equal(CellStatus.Failed, result.Status);
        Assert.Equal("InvalidOperationException", result.Error!.Name);
        Assert.Equal("no wort", result.Error.Message);
        Assert.Equal(result.Error, Assert.IsType<ErrorOutput>(Assert.Single(outputs)).Error);
        Assert.Equal("3", await kernel.Value("kept + own"));
    }

    [Fact]
    public async Task A_cell_that_does_not_compile_says_line_and_column()
    {
        var (result, outputs) = await kernel.Run("var a = 1;\nvar b = nothing + 1;");
        Assert.Equal(CellStatus.Failed, result.Status);
        Assert.Equal(CellError.CompilationError, result.Error!.Name);
        Assert.StartsWith("line 2, column 9: CS0103", result.Error.Message, StringComparison.Ordinal);
        Assert.Equal(["    var b = nothing + 1;", "            ^"], result.Error.Traceback.Skip(1));
        Assert.Single(outputs);
    }

    [Fact]
    public async Task Console_text_comes_in_order_by_stream_and_joined()
    {
        var (_, outputs) = await kernel.Run("for (var i = 0; i < 100; i++) Console.Write(i + \" \");\nConsole.Error.WriteLine(\"oops\");\nConsole.WriteLine(\"end\");\n7");
        Assert.Collection(
            outputs,
            o => Assert.Equal(new StreamOutput(ConsolePipe.Out, string.Concat(Enumerable.Range(0, 100).Select(i => i + " "))), o),
            o => Assert.Equal(new StreamOutput(ConsolePipe.Error, "oops" + Environment.NewLine), o),
            o => Assert.Equal(new StreamOutput(ConsolePipe.Out, "end" + Environment.NewLine), o),
            o => Assert.Equal("7", Assert.IsType<ResultOutput>(o).Data["text/plain"]));
    }

    [Fact]
    public async Task A_display_is_updated_under_its_own_id_even_from_a_later_cell()
    {
        var (_, first) = await kernel.Run("var shown = display(\"one\");\nshown.Update(\"two\");");
        var id = Assert.IsType<DisplayOutput>(first[0]).DisplayId;
        var update = Assert.IsType<DisplayUpdate>(first[1]);
        Assert.Equal((id, "two"), (update.DisplayId, update.Data["text/plain"]));
        var (_, second) = await kernel.Run("shown.Update(3);");
        Assert.Equal((id, "3"), (Assert.IsType<DisplayUpdate>(Assert.Single(second)).DisplayId, ((DisplayUpdate)second[0]).Data["text/plain"]));
    }

    [Fact]
    public async Task Input_is_asked_for_and_answered()
    {
        var asked = new List<InputRequest>();
        var options = new ExecuteOptions { Input = (r, _) => { asked.Add(r); return Task.FromResult("42"); } };
        var (_, outputs) = await kernel.Run("var a = await GetInputAsync(\"How many?\");\nvar b = Console.ReadLine();\na + b", options);
        Assert.Equal([new InputRequest("How many?", false), new InputRequest("", false)], asked);
        Assert.Equal("4242", Assert.IsType<ResultOutput>(Assert.Single(outputs)).Data["text/plain"]);
    }

    [Fact]
    public async Task Input_with_nobody_there_is_an_error_and_not_a_wait()
    {
        var (result, _) = await kernel.Run("await GetInputAsync(\"How many?\")");
        Assert.Equal(CellStatus.Failed, result.Status);
        Assert.Contains("nobody is there to answer", result.Error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_background_task_that_outlives_its_cell_still_writes_to_it()
    {
        var late = new TaskCompletionSource<CellOutput>();
        await kernel.Run("_ = Task.Run(async () => { await Task.Delay(100); Console.WriteLine(\"late\"); });", new ExecuteOptions { LateOutput = o => late.TrySetResult(o) });
        await kernel.Run("2");
        var output = await late.Task.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.Equal(new StreamOutput(ConsolePipe.Out, "late" + Environment.NewLine), output);
    }
}
