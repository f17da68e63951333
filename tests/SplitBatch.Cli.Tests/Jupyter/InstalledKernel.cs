using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using SplitBatch.Kernel.Jupyter;

namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// The kernel as <c>splitbatch kernel install</c> leaves it, in a Jupyter data folder of its own, and the Python tests run against it.
/// </summary>
public sealed class InstalledKernel : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("jupyter-");
    private readonly ConcurrentDictionary<string, Lazy<Task<IReadOnlyDictionary<string, Outcome>>>> _suites = new(StringComparer.Ordinal);

    /// <summary>A folder for whatever a test writes; removed at the end.</summary>
    public string Folder => _folder.FullName;

    /// <summary>What the installing command said.</summary>
    public string Said { get; private set; } = "";

    /// <summary>The kernel's own folder.</summary>
    public string Spec => Path.Combine(Data, "kernels", KernelSpec.Name);

    private string Data => Path.Combine(Folder, "data");

    public async Task InitializeAsync()
    {
        if (Installed.Reason(() => DebianJupyter.Missing) is not null) return;
        var (code, output) =
            await RunAsync("dotnet", [CommandLine.Program, "kernel", "install", "--as-built"], Folder, TimeSpan.FromMinutes(2));
        Assert.True(code == 0, output);
        Said = output;
    }

    public Task DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return Task.CompletedTask;
    }

    /// <summary>
    /// Fails where the Python test of this name failed, was skipped or did not run. The suite is run once for all its tests.
    /// </summary>
    /// <param name="suite">A module of <c>tests/jupyter</c>.</param>
    /// <param name="test">The name of one of its tests.</param>
    /// <param name="prepare">Sets what the suite finds in its environment.</param>
    public async Task AssertPassedAsync(string suite, string test, Action<ProcessStartInfo>? prepare = null)
    {
        var outcomes = await _suites.GetOrAdd(suite, s => new(() => RunSuiteAsync(s, prepare))).Value;
        Assert.True(outcomes.TryGetValue(test, out var outcome),
            $"{suite} ran without {test}; it ran: {string.Join(", ", outcomes.Keys)}");
        Assert.True(outcome.Ended == "ok", $"{test} {outcome.Ended}: {outcome.Why}");
    }

    /// <summary>Runs a program that finds the installed kernel, to its end.</summary>
    public async Task<(int Code, string Output)> RunAsync(string program, IEnumerable<string> words, string folder, TimeSpan limit,
        Action<string>? onLine = null, Action<ProcessStartInfo>? prepare = null)
    {
        using var process = Start(program, words, folder, prepare);
        var text = new System.Text.StringBuilder();
        process.OutputDataReceived += (_, e) => { lock (text) { text.AppendLine(e.Data); } if (e.Data is not null)
            onLine?.Invoke(e.Data); };
        process.ErrorDataReceived += (_, e) => { lock (text) text.AppendLine(e.Data); };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        using var stop = new CancellationTokenSource(limit);
        try
        {
            await process.WaitForExitAsync(stop.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} {string.Join(' ', words)} did not end within {limit}. It said: {text}");
        }

        lock (text) return (process.ExitCode, text.ToString());
    }

    /// <summary>Starts a program that finds the installed kernel and nothing of the user's own Jupyter settings.</summary>
    public Process Start(string program, IEnumerable<string> words, string folder, Action<ProcessStartInfo>? prepare = null)
    {
        var start = new ProcessStartInfo(program, words)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["JUPYTER_DATA_DIR"] = Data;
        start.Environment["JUPYTER_CONFIG_DIR"] = Path.Combine(Folder, "config");
        start.Environment["JUPYTER_RUNTIME_DIR"] = Path.Combine(Folder, "runtime");
        start.Environment["IPYTHONDIR"] = Path.Combine(Folder, "ipython");
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        start.Environment["PYDEVD_DISABLE_FILE_VALIDATION"] = "1";
        start.Environment["SPLITBATCH_ROOT"] = Repository.Root;
        prepare?.Invoke(start);
        return Process.Start(start)!;
    }

    private async Task<IReadOnlyDictionary<string, Outcome>> RunSuiteAsync(string suite, Action<ProcessStartInfo>? prepare)
    {
        var outcomes = new ConcurrentDictionary<string, Outcome>(StringComparer.Ordinal);
        var (code, output) =
            await RunAsync(Installed.DebianPython, ["report.py", suite], Repository.Path("tests", "jupyter"),
                TimeSpan.FromMinutes(10), line =>
                {
                    if (!line.StartsWith("{\"test\"", StringComparison.Ordinal)) return;
                    using var json = JsonDocument.Parse(line);
                    var test = json.RootElement;
                    outcomes[test.GetProperty("test").GetString()!] =
                        new Outcome(test.GetProperty("outcome").GetString()!, test.GetProperty("why").GetString()!);
                }, prepare);
        Assert.True(code == 0 && !outcomes.IsEmpty, $"{suite} did not run: {output}");
        return outcomes;
    }

    private sealed record Outcome(string Ended, string Why);
}

/// <summary>Tests that share one installed kernel; they take turns.</summary>
[CollectionDefinition(Name)]
public sealed class JupyterTests : ICollectionFixture<InstalledKernel>
{
    public const string Name = "jupyter";
}

/// <summary>The built command, as a program of its own.</summary>
internal static class CommandLine
{
    /// <summary>The library that <c>dotnet</c> starts.</summary>
    public static string Program { get; } = Repository.Path("src", "SplitBatch.Cli", "bin",
        new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name, "net10.0", "SplitBatch.Cli.dll");
}
