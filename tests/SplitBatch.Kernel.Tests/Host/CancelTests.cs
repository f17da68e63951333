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
}
