using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

/// <summary>What would end the process of another kernel, and a cell that cannot be stopped at once.</summary>
public sealed class SurvivalTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Theory]
    [InlineData("int Down(int n) => Down(n + 1) + 1; Down(0)")]
    [InlineData("Func<int, int> down = null!; down = n => down(n + 1) + 1; down(0)")]
    [InlineData("class Loop { public int Value => Value + 1; } new Loop().Value")]
    [InlineData("IEnumerable<int> Walk(int n) { try { foreach (var i in Walk(n + 1)) yield return i; } finally { n--; } } "
        + "Walk(0).Count()")]
    [InlineData("int Down(int n) => Down(n + 1) + 1; await Task.Run(() => Down(0))")]
    [InlineData("async Task<int> Down(int n) => await Down(n + 1) + 1; await Down(0)")]
    [InlineData("async Task<int> Down(int n) => await Down(n + 1) + 1; Down(0).Result")]
    [InlineData("async Task<int> Down(int n) => await Down(n + 1) + 1; await Task.Run(() => Down(0))")]
    public async Task A_full_stack_is_an_error_by_name(string code)
    {
        var (result, _) = await Survived(code);
        Assert.Equal(nameof(InsufficientExecutionStackException), result.Error!.Name);
        Assert.InRange(string.Join('\n', result.Error.Traceback).Length, 20, 1000);
    }

    [Theory]
    [InlineData("Environment.Exit(3);", "A cell cannot end the kernel (Environment.Exit(3)).")]
    [InlineData("Environment.FailFast(\"so\");", "A cell cannot end the kernel (Environment.FailFast: so).")]
    [InlineData("System.Diagnostics.Process.GetCurrentProcess().Kill();",
        "A cell cannot end the kernel (Process.Kill on the kernel itself).")]
    [InlineData("var thrower = new Thread(() => throw new FormatException(\"alone\")); thrower.Start(); thrower.Join();", "alone")]
    [InlineData("ThreadPool.UnsafeQueueUserWorkItem(_ => throw new FormatException(\"pool\"), null); Thread.Sleep(300);", "pool")]
    [InlineData("async void Fire() { await Task.Delay(10); throw new FormatException(\"void\"); } Fire(); await Task.Delay(300);", "void")]
    public async Task What_would_end_the_process_is_an_error_by_name(string code, string message)
    {
        var (result, _) = await Survived(code);
        Assert.Equal(message, result.Error!.Message);
    }

    [Fact]
    public async Task Async_recursion_without_end_is_stopped()
    {
        await Stopped("async Task<int> Down(int n) { await Task.Yield(); return await Down(n + 1); } await Down(0)");
    }

    [Fact]
    public async Task A_cell_in_a_library_is_left_behind_and_what_it_does_is_not_kept()
    {
        await kernel.Run("static class Straggler { public static readonly ManualResetEventSlim Ended = new(); }");
        var (result, _) = await Stopped("""
            var left = 1;
            var endless = new System.Text.RegularExpressions.Regex("^(a+)+$", default, TimeSpan.FromSeconds(5));
            try { endless.IsMatch(new string('a', 40) + "!"); } finally { Straggler.Ended.Set(); }
            left = 2;
            """);
        Assert.Contains("nothing that it does is kept", result.Error!.Message, StringComparison.Ordinal);
        Assert.Equal("True", await kernel.Value("Straggler.Ended.Wait(60_000)"));
        Assert.Equal("CompilationError", (await kernel.Run("left")).Result.Error!.Name);
    }

    [Fact]
    public async Task What_a_stopped_cell_started_stops_too()
    {
        await kernel.Run("static class Count { public static long Turns; }");
        await Stopped("for (var i = 0; i < 2; i++) _ = Task.Run(() => { while (true) Count.Turns++; }); while (true) { }");
        Assert.Equal("True", await kernel.Value("Thread.Sleep(900); var seen = Count.Turns; Thread.Sleep(200); seen == Count.Turns"));
    }

    [Fact]
    public async Task Finally_blocks_and_disposals_of_a_stopped_cell_run()
    {
        await kernel.Run("static class Tidied { public static int Count; }");
        await Stopped("try { while (true) { } } finally { for (var i = 0; i < 10; i++) Tidied.Count++; }");
        Assert.Equal("10", await kernel.Value("Tidied.Count"));
    }

    [Fact]
    public async Task What_a_program_prints_that_a_cell_starts_is_the_cells()
    {
        var code = "System.Diagnostics.Process.Start(\"dotnet\", \"--version\").WaitForExit();";
        Assert.Matches(@"^\d+\.\d+", HostFixture.Text(Assert.Single((await kernel.Run(code)).Outputs)));
    }

    [Fact]
    public async Task A_cell_that_prints_for_ever_is_held_to_a_bound_and_told_so()
    {
        var (_, outputs) = await Stopped("while (true) Console.WriteLine(new string('x', 1000));", until: "the rest is left out");
        Assert.InRange(outputs.Sum(o => HostFixture.Text(o).Length), RunningCell.MostText, RunningCell.MostText + 50_000);
        Assert.Contains("the rest is left out", HostFixture.Text(outputs[^1]), StringComparison.Ordinal);
    }

    private async Task<(CellResult Result, List<CellOutput> Outputs)> Survived(string code)
    {
        await kernel.Run("var before = 20;");
        var ran = await kernel.Run(code);
        Assert.Equal("21", await kernel.Value("before + 1"));
        return ran;
    }

    /// <summary>Runs a cell, and stops it once it has begun, or has put something out.</summary>
    private async Task<(CellResult Result, List<CellOutput> Outputs)> Stopped(string code, string until = "begun")
    {
        await kernel.Run("var before = 20;");
        var begun = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var sink = new ListSink
        {
            OnPublish = output =>
            {
                if (HostFixture.Text(output).Contains(until, StringComparison.Ordinal)) begun.TrySetResult();
            },
        };
        var cell = kernel.Host.ExecuteAsync($"display(\"begun\"); {code}", sink);
        await begun.Task.WaitAsync(TimeSpan.FromMinutes(2));
        await Task.Delay(100);
        await kernel.Host.InterruptAsync();
        var result = await cell.WaitAsync(TimeSpan.FromMinutes(1));
        Assert.True(result.Interrupted);
        Assert.Equal("21", await kernel.Value("before + 1"));
        return (result, sink.Outputs);
    }
}
