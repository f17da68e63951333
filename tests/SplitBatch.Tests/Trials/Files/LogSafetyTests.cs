namespace SplitBatch.Trials.Files;

public class LogSafetyTests
{
    /// <summary>The short run; <c>dotnet run -c Release --project tests/SplitBatch.Proof -- kills 1000</c> is the long one.</summary>
    [Fact]
    public async Task A_writer_killed_at_random_moments_loses_no_acknowledged_row_and_leaves_none_torn()
    {
        var run = await KillRun.Of(60, seed: 5725);

        // The test means something only if rows were acknowledged and some kills fell into the middle of a row.
        Assert.True(run.Acknowledged > run.Kills, $"only {run.Acknowledged} rows were acknowledged");
        Assert.True(run.Named > 5, $"only {run.Named} kills of {run.Kills} fell into the middle of a row");
    }

    [Fact]
    public async Task Two_programs_that_log_a_thousand_rows_each_at_once_lose_nothing()
    {
        const int Rows = 1000;
        using var folder = new TemporaryFolder();
        using var left = new LogWriter(folder.Path, "left", 0, Rows, 0);
        using var right = new LogWriter(folder.Path, "right", 0, Rows, 0);
        await Task.WhenAll(left.Go(), right.Go());
        var ends = await Task.WhenAll(left.End(), right.End());
        Assert.Equal([0, 0], [left.ExitCode, right.ExitCode]);
        Assert.All(ends, ids => Assert.Equal(Rows, ids.Count));
        Assert.Empty(KillRun.Check(folder.Path, ends[0].Concat(ends[1]).ToHashSet(), "two programs"));
        var order = new AppendLog(folder.Path, LogFormat.LabReturns).Read().Select(row => row.Id[..4]).ToList();
        Assert.Equal(2 * Rows, order.Count);
        Assert.True(order.Zip(order.Skip(1)).Count(pair => pair.First != pair.Second) > 10,
            "the two hardly took turns, so the test showed little");
    }

    [Fact]
    public async Task Threads_that_share_a_log_or_have_their_own_lose_nothing()
    {
        using var folder = new TemporaryFolder();
        var shared = new AppendLog(folder.Path, LogFormat.LabReturns);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(writer => Task.Run(() =>
        {
            var log = writer < 2 ? shared : new AppendLog(folder.Path, LogFormat.LabReturns);
            for (var i = 0; i < 40; i++) log.Append(WriterProgram.Row($"t{writer}", i));
        })));
        Assert.Empty(KillRun.Check(folder.Path, Enumerable.Range(0, 160).Select(i => $"t{i / 40}-{i % 40}").ToHashSet(), "threads"));
    }

    [Fact]
    public void A_writer_that_waits_too_long_for_its_turn_says_so()
    {
        using var folder = new TemporaryFolder();
        folder.Write("lab-returns.csv", "");
        using var held = File.OpenHandle(folder.PathOf("lab-returns.csv"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var log = new AppendLog(folder.Path, LogFormat.LabReturns) { Patience = TimeSpan.FromMilliseconds(20) };
        Assert.Contains("Another program", Assert.Throws<LogException>(() => log.Append(WriterProgram.Row("w", 1))).Message,
            StringComparison.Ordinal);
    }
}
