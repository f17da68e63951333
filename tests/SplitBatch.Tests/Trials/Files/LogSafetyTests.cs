namespace SplitBatch.Trials.Files;

public class LogSafetyTests
{
    /// <summary>At least 200 whatever is asked for; a longer run by the environment variable SPLITBATCH_KILLS.</summary>
    private static readonly int Kills = Math.Max(210, int.TryParse(Environment.GetEnvironmentVariable("SPLITBATCH_KILLS"), out var asked) ? asked : 0);

    [Fact]
    public async Task A_writer_killed_at_random_moments_loses_no_acknowledged_row_and_leaves_none_torn()
    {
        const int Seed = 5725;
        var random = new Random(Seed);
        var (acknowledgedInAll, torn) = (0, 0);
        var folder = new TemporaryFolder();
        var acknowledged = new HashSet<string>();
        var next = Start(0);
        for (var kill = 0; kill < Kills; kill++)
        {
            using var writer = next;
            await writer.Go();
            var ids = await writer.Kill(TimeSpan.FromMilliseconds(random.NextDouble() * 8));
            acknowledgedInAll += ids.Count;
            acknowledged.UnionWith(ids);
            torn += Check(folder, acknowledged, $"kill {kill}, seed {Seed}");
            if (kill % 30 == 29)
            {
                // A fresh file now and then, so that the first write of a file is met too.
                folder.Dispose();
                folder = new TemporaryFolder();
                acknowledged.Clear();
            }

            if (kill + 1 < Kills) next = Start(kill + 1);
        }

        folder.Dispose();

        // The test means something only if rows were acknowledged and some kills fell into the middle of a row.
        Assert.True(acknowledgedInAll > Kills, $"only {acknowledgedInAll} rows were acknowledged");
        Assert.True(torn > 20, $"only {torn} kills of {Kills} fell into the middle of a row");

        // Two in three write a few bytes at a time, as on a slow disk, so that a kill falls into the middle of a row; the others write as the product does.
        LogWriter Start(int kill) => new(folder.Path, $"w{kill}", 0, 0, kill % 3 == 2 ? 0 : 12 + kill % 30, wanted: 1 + kill % 2);
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
        Assert.Equal(0, Check(folder, [.. ends[0], .. ends[1]], "two programs"));
        var order = new AppendLog(folder.Path, LogFormat.LabReturns).Read().Select(row => row.Id[..4]).ToList();
        Assert.Equal(2 * Rows, order.Count);
        Assert.True(order.Zip(order.Skip(1)).Count(pair => pair.First != pair.Second) > 10, "the two hardly took turns, so the test showed little");
    }

    [Fact]
    public async Task Threads_that_share_a_log_or_have_their_own_lose_nothing()
    {
        using var folder = new TemporaryFolder();
        var shared = new AppendLog(folder.Path, LogFormat.LabReturns);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(writer => Task.Run(() =>
        {
            var log = writer < 2 ? shared : new AppendLog(folder.Path, LogFormat.LabReturns);
            for (var i = 0; i < 40; i++) log.Append(Program.Row($"t{writer}", i));
        })));
        Check(folder, [.. from writer in Enumerable.Range(0, 4) from i in Enumerable.Range(0, 40) select $"t{writer}-{i}"], "threads");
    }

    [Fact]
    public void A_writer_that_waits_too_long_for_its_turn_says_so()
    {
        using var folder = new TemporaryFolder();
        folder.Write("lab-returns.csv", "");
        using var held = File.OpenHandle(folder.PathOf("lab-returns.csv"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var log = new AppendLog(folder.Path, LogFormat.LabReturns) { Patience = TimeSpan.FromMilliseconds(20) };
        Assert.Contains("Another program", Assert.Throws<LogException>(() => log.Append(Program.Row("w", 1))).Message, StringComparison.Ordinal);
    }

    /// <summary>Every whole row reads as it was written, every acknowledged one is there; returns 1 where a row was cut short, else 0.</summary>
    private static int Check(TemporaryFolder folder, HashSet<string> acknowledged, string when)
    {
        if (!File.Exists(folder.PathOf("lab-returns.csv")))
        {
            Assert.Empty(acknowledged);
            return 0;
        }

        var faults = new FaultList();
        var table = LogText.Table(LogFormat.LabReturns, new TrialFolder(folder.Path).ReadText("lab-returns.csv", faults)!, faults);
        Assert.False(faults.HasErrors, $"{when}: {string.Join("; ", faults)}");
        var ids = new HashSet<string>();
        foreach (var row in table.Rows)
        {
            var id = row.Text("id")!;
            var (name, number) = (id[..id.IndexOf('-', StringComparison.Ordinal)], int.Parse(id[(id.IndexOf('-', StringComparison.Ordinal) + 1)..], System.Globalization.CultureInfo.InvariantCulture));
            foreach (var (column, value) in Program.Row(name, number))
            {
                Assert.True(row.Optional(column) == value, $"{when}: row {id}, {column} reads {row.Optional(column)}");
            }

            Assert.True(ids.Add(id), $"{when}: {id} stands twice");
        }

        Assert.True(acknowledged.IsSubsetOf(ids), $"{when}: lost {string.Join(", ", acknowledged.Except(ids))}");
        return faults.Count;
    }
}
