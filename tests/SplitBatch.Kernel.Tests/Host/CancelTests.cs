using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Host;

public class CancelTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    public static TheoryData<string> Endless => new()
    {
        "while (true) { }",
        "while (true) { try { while (true) { } } catch { } }",
        "await Task.Delay(600_000);",
        "await Task.Delay(1); while (true) { }",
        "Thread.Sleep(600_000);",
        "Task.Delay(600_000).Wait();",
        "await Task.Yield(); Thread.Sleep(600_000);",
        "while (true) { try { Thread.Sleep(600_000); } catch (Exception) { } }",
        "lock (new object()) { new ManualResetEvent(false).WaitOne(); }",
    };

    [Theory]
    [MemberData(nameof(Endless))]
    public async Task A_cell_is_stopped_whatever_it_does_and_the_next_one_runs(string code)
    {
        await kernel.Run("var before = 20;");
        var (result, _) = await kernel.Run(code, limit: TimeSpan.FromSeconds(0.5));
        Assert.True(result.Interrupted);
        Assert.Equal("Interrupted", result.Error!.Name);
        Assert.False(kernel.Host.IsStuck);
        Assert.Equal("21", await kernel.Value("before + 1"));
    }

    [Fact]
    public async Task What_comes_after_an_abandoned_await_never_runs()
    {
        await kernel.Run("static class Seen { public static int Count; }");
        var (result, _) = await kernel.Run("await Task.Delay(700); Seen.Count++;", limit: TimeSpan.FromSeconds(0.3));
        Assert.True(result.Interrupted);
        Assert.Equal("0", await kernel.Value("await Task.Delay(800); Seen.Count"));
    }

    [Fact]
    public async Task Interrupting_stops_the_running_cell_and_says_so()
    {
        var started = new TaskCompletionSource();
        var sink = new ListSink { OnPublish = _ => started.TrySetResult() };
        var cell = kernel.Host.ExecuteAsync("Console.WriteLine(\"go\"); while (true) { }", sink);
        await started.Task.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.True(await kernel.Host.InterruptAsync());
        var result = await cell.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.True(result.Interrupted);
        Assert.Equal(new TextOutput("go" + Environment.NewLine), Assert.Single(sink.Outputs));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(100)]
    [InlineData(400)]
    public async Task A_cell_that_waits_for_the_kernel_to_start_is_stopped_and_the_kernel_starts_all_the_same(int milliseconds)
    {
        await using var cold = new KernelHost();
        var cell = cold.ExecuteAsync("while (true) { }", new ListSink());
        await Task.Delay(milliseconds);
        Assert.True(await cold.InterruptAsync());
        Assert.True((await cell.WaitAsync(TimeSpan.FromSeconds(20))).Interrupted);
        Assert.True((await cold.ExecuteAsync("1 + 1", new ListSink())).Succeeded);
    }

    [Fact]
    public async Task A_cell_stopped_before_it_began_never_begins()
    {
        await kernel.Run("static class Begun { public static int Count; }");
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        Assert.True((await kernel.Host.ExecuteAsync("Begun.Count++;", new ListSink(), stop.Token)).Interrupted);
        Assert.Equal("0", await kernel.Value("await Task.Delay(300); Begun.Count"));
    }
}
