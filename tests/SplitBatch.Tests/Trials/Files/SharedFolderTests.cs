using System.Diagnostics;
using System.Globalization;

namespace SplitBatch.Trials.Files;

/// <summary>A folder that several accounts share: each may add to what another has made, and a lock is nobody's own.</summary>
public sealed class SharedFolderTests
{
    private const int Rows = 60;

    [TwoAccountsFact]
    public async Task Two_accounts_log_into_one_folder_at_once_and_lose_nothing()
    {
        using var folder = Shared();
        using var left = Writer(folder.Path, "left", 60_001, Rows);
        using var right = Writer(folder.Path, "right", 60_002, Rows);
        await Task.WhenAll(left.Go(), right.Go());
        var ends = await Task.WhenAll(left.End(), right.End());
        Assert.Equal([0, 0], [left.ExitCode, right.ExitCode]);
        Assert.All(ends, ids => Assert.Equal(Rows, ids.Count));
        var rows = new AppendLog(folder.Path, LogFormat.LabReturns).Read().Select(row => row.Id).ToHashSet();
        Assert.Equal(2 * Rows, rows.Count);
        Assert.Equal(["lab-returns.csv"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [TwoAccountsFact]
    public async Task What_one_account_left_half_done_keeps_no_other_from_writing()
    {
        using var folder = Shared();
        for (var turn = 0; turn < 8; turn++)
        {
            using var killed = Writer(folder.Path, $"k{turn}", 60_001 + turn % 2, count: 0, pieceSize: 16, wanted: 1);
            await killed.Go();
            var acknowledged = await killed.Kill(TimeSpan.FromMilliseconds(turn));
            using var next = Writer(folder.Path, $"n{turn}", 60_002 - turn % 2, count: 1);
            await next.Go();
            Assert.Equal([$"n{turn}-0"], await next.End());
            var rows = new AppendLog(folder.Path, LogFormat.LabReturns).Read().Select(row => row.Id).ToHashSet();
            Assert.True(rows.IsSupersetOf([.. acknowledged, $"n{turn}-0"]));
        }
    }

    [TwoAccountsFact]
    public async Task An_account_that_may_not_write_is_told_so()
    {
        using var folder = Shared();
        Run("chmod", "g-w", folder.Path);
        using var writer = Writer(folder.Path, "w", 60_001, count: 1);
        await writer.Go();
        Assert.Contains("This account may not add to lab-returns.csv", Assert.Single(await writer.End()), StringComparison.Ordinal);
    }

    private static TemporaryFolder Shared()
    {
        var folder = new TemporaryFolder();
        Run("chgrp", Number(TwoAccountsFactAttribute.Group), folder.Path);
        Run("chmod", "2775", folder.Path);
        return folder;
    }

    private static void Run(string program, params string[] words)
    {
        using var process = Process.Start(program, words);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }

    private static LogWriter Writer(string folder, string name, int account, int count, int pieceSize = 0, int wanted = int.MaxValue) =>
        new(folder, name, 0, count, pieceSize, wanted, TwoAccountsFactAttribute.As(account));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A test that runs programs under accounts of their own, which only root may.</summary>
internal sealed class TwoAccountsFactAttribute : FactAttribute
{
    /// <summary>The group that both accounts are in.</summary>
    public const int Group = 60_100;

    public TwoAccountsFactAttribute() => Skip = Installed.Reason(() =>
        Installed.Program("setpriv") is null || !Environment.IsPrivilegedProcess
            ? "Two accounts cannot be had: this takes root and setpriv (util-linux)."
        : Installed.Runs("setpriv", [.. As(60_001)[1..], "dotnet", typeof(Program).Assembly.Location, "hello"]) ? null
        : "Two accounts cannot be had: another account may not read this build.");

    /// <summary>The words that start a program under an account without rights of its own.</summary>
    public static string[] As(int account)
    {
        var id = account.ToString(CultureInfo.InvariantCulture);
        return ["setpriv", $"--reuid={id}", $"--regid={id}", $"--groups={Group.ToString(CultureInfo.InvariantCulture)}"];
    }
}
