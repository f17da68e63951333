using System.Diagnostics;
using SplitBatch.Cli.Walks;

namespace SplitBatch.Cli.Commands;

/// <summary>
/// The three write-ups by one command, and by the same command as a program of its own in another time zone, language and folder.
/// </summary>
public sealed class WriteUpCommandTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("write-up-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Three_trials_are_written_up_by_one_command_with_the_same_bytes_in_another_time_zone_language_and_folder()
    {
        string[] trials = [.. new[] { "amber-cone-or-pellet", "stout-early-or-late", "lager-one-rest-or-two" }
            .Select(name => Repository.Path("data-demo", name))];
        var here = Path.Combine(folder.FullName, "here");
        var said = await Walk.Call(0, ["write-up", .. trials, "--out", here]);
        Assert.Contains("Write-up \"Stout: bittered early or late?\": 9 figures", said, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(here, "lager-one-rest-or-two", "write-up.html"), said, StringComparison.Ordinal);

        var start = new ProcessStartInfo("dotnet", [typeof(SplitBatchApp).Assembly.Location, "write-up", .. trials, "--out", "there"])
        {
            WorkingDirectory = folder.FullName,
            RedirectStandardOutput = true,
            Environment = { ["TZ"] = "Pacific/Chatham", ["LANG"] = "de_DE.UTF-8", ["LC_ALL"] = "de_DE.UTF-8" },
        };
        using (var process = Process.Start(start)!)
        {
            await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.Equal(0, process.ExitCode);
        }

        var files = Files(here);
        Assert.True(files.Count > 100);
        Assert.Equal(files, Files(Path.Combine(folder.FullName, "there")));
        Assert.All(files,
            file => Assert.True(File.ReadAllBytes(Path.Combine(here, file)).AsSpan()
                .SequenceEqual(File.ReadAllBytes(Path.Combine(folder.FullName, "there", file))), file));
    }

    [Fact]
    public async Task A_folder_that_is_none_is_a_wrong_call_and_a_folder_with_faults_gives_1()
    {
        Assert.Contains("There is no folder nowhere.", await Walk.Call(2, "write-up", "nowhere"), StringComparison.Ordinal);
        Assert.Contains("trial.json: The file is missing.",
            await Walk.Call(1, "write-up", folder.FullName, "--out", Path.Combine(folder.FullName, "out")), StringComparison.Ordinal);
    }

    private static List<string> Files(string root) =>
        [.. Directory.GetFiles(root, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(root, file))
            .Order(StringComparer.Ordinal)];
}
