using System.Diagnostics;
using System.Text.Json;

namespace SplitBatch.Cli.Jupyter;

/// <summary><c>splitbatch kernel install</c>, <c>start</c> and <c>remove</c>, as a program of its own.</summary>
public sealed class InstallTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("install-");

    public void Dispose() => _root.Delete(recursive: true);

    [Fact]
    public void For_the_user_it_goes_where_Jupyter_looks_and_is_removed_again()
    {
        var kernels = Path.Combine(_root.FullName, "share", "jupyter", "kernels");
        var said = Call(0, "kernel", "install", "--as-built");
        Assert.Contains($"installed in {kernels}/splitbatch", said, StringComparison.Ordinal);
        using var spec = JsonDocument.Parse(File.ReadAllText(Path.Combine(kernels, "splitbatch", "kernel.json")));
        var words = spec.RootElement.GetProperty("argv").EnumerateArray().Select(w => w.GetString()!).ToArray();
        Assert.Equal(["kernel", "start", "--connection-file", "{connection_file}"], words[^4..]);
        Assert.All(words[..^4], word => Assert.True(File.Exists(word), word));
        Assert.Equal("message", spec.RootElement.GetProperty("interrupt_mode").GetString());
        Assert.Equal("C#", spec.RootElement.GetProperty("language").GetString());
        Assert.InRange(new FileInfo(Path.Combine(kernels, "splitbatch", "plotly.min.js")).Length, 3_000_000, 5_000_000);

        Assert.Contains("Removed", Call(0, "kernel", "remove"), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(kernels, "splitbatch")));
        Assert.Contains("No kernel 'splitbatch' is installed", Call(1, "kernel", "remove"), StringComparison.Ordinal);
    }

    [Fact]
    public void For_an_environment_it_goes_below_its_prefix()
    {
        var prefix = _root.CreateSubdirectory("venv").FullName;
        Call(0, "kernel", "install", "--prefix", prefix, "--as-built");
        Assert.True(File.Exists(Path.Combine(prefix, "share", "jupyter", "kernels", "splitbatch", "kernel.json")));
        Call(0, "kernel", "remove", "--prefix", prefix);
        Assert.Empty(Directory.GetFileSystemEntries(Path.Combine(prefix, "share", "jupyter", "kernels")));
    }

    [Fact]
    public void For_the_system_it_goes_where_every_user_s_Jupyter_looks() =>
        Assert.Equal("/usr/local/share/jupyter/kernels", SplitBatch.Kernel.Jupyter.KernelFolders.System());

    [Fact]
    public void Two_places_at_once_and_a_prefix_that_is_not_there_are_refused()
    {
        Assert.Contains("Give one place", Call(2, "kernel", "install", "--user", "--system"), StringComparison.Ordinal);
        Assert.Contains("there is no folder", Call(2, "kernel", "install", "--prefix", Path.Combine(_root.FullName, "nowhere")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_that_name_that_is_not_ours_is_left_alone()
    {
        var kernels = _root.CreateSubdirectory("venv/share/jupyter/kernels/splitbatch");
        File.WriteAllText(Path.Combine(kernels.FullName, "kernel.json"), "{}");
        Assert.Contains("was not written by this command", Call(1, "kernel", "remove", "--prefix", Path.Combine(_root.FullName, "venv")),
            StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(kernels.FullName, "kernel.json")));
    }

    [Fact]
    public void Start_without_a_connection_file_or_with_a_wrong_one_says_what_is_wrong()
    {
        Assert.Contains("--connection-file: there is no file", Call(2, "kernel", "start", "--connection-file", "nowhere.json"),
            StringComparison.Ordinal);
        Assert.Contains("connection-file", Call(2, "kernel", "start"), StringComparison.Ordinal);
    }

    private string Call(int code, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet", [CommandLine.Program, .. words])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _root.FullName,
        };
        start.Environment.Remove("JUPYTER_DATA_DIR");
        start.Environment["XDG_DATA_HOME"] = Path.Combine(_root.FullName, "share");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd() + error.GetAwaiter().GetResult();
        process.WaitForExit();
        Assert.True(process.ExitCode == code, $"{string.Join(' ', words)} ended with {process.ExitCode}: {said}");
        return said;
    }
}
