using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;

namespace SplitBatch.Cli.Jupyter;

/// <summary>Classic Notebook in a browser without a network. What the browser does is in <c>tests/browser/classic-notebook.mjs</c>.</summary>
[Collection(JupyterTests.Name)]
public sealed class BrowserTests(InstalledKernel kernel)
{
    private const string Notebook = "4-panel-statistics.ipynb";
    private static readonly string Script = Repository.Path("tests", "browser", "classic-notebook.mjs");

    [BrowserFact]
    public async Task A_notebook_of_the_project_runs_in_classic_Notebook_with_charts_completion_and_interrupt()
    {
        var folder = Directory.CreateDirectory(Path.Combine(kernel.Folder, "browser")).FullName;
        Copy(Repository.Path("notebooks"), Path.Combine(folder, "notebooks"));
        Copy(Repository.Path("data-demo"), Path.Combine(folder, "data-demo"));
        var port = FreePort();
        using var server = kernel.Start(
            DebianJupyter.Python,
            ["-m", "notebook", "--no-browser", "--allow-root", "--ip=127.0.0.1", $"--port={port}", "--port-retries=0", "--NotebookApp.token=", "--NotebookApp.password=", $"--notebook-dir={folder}"],
            folder);
        server.OutputDataReceived += (_, _) => { };
        server.ErrorDataReceived += (_, _) => { };
        server.BeginOutputReadLine();
        server.BeginErrorReadLine();
        try
        {
            await Answers(port, server);
            var pictures = Environment.GetEnvironmentVariable("SPLITBATCH_PICTURES") is { Length: > 0 } kept ? Directory.CreateDirectory(kept).FullName : folder;
            var (_, output) = await kernel.RunAsync("node", [Script, $"http://127.0.0.1:{port}/notebooks/notebooks/{Notebook}", Tools.Chromium!, pictures], folder, TimeSpan.FromMinutes(5));
            Check(output, pictures);
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
        }
    }

    private static void Check(string output, string pictures)
    {
        var line = output.Split('\n').LastOrDefault(l => l.StartsWith('{'));
        Assert.True(line is not null, output);
        using var json = JsonDocument.Parse(line);
        var found = json.RootElement;
        Assert.False(found.TryGetProperty("failed", out var failed), $"{failed} {line}");
        Assert.Equal("splitbatch", Text("kernel"));
        Assert.Empty(found.GetProperty("outside").EnumerateArray());
        Assert.Empty(found.GetProperty("errors").EnumerateArray());
        Assert.True(Number("charts") >= 3 && Number("charts") == Number("figures"), line);
        Assert.Equal((1, 0), (Number("library"), Number("copies"))); // Fetched once from the kernel's own folder, and in no cell.
        foreach (var picture in found.GetProperty("pictures").EnumerateArray())
        {
            Assert.InRange(picture.GetProperty("width").GetInt32(), 300, 1200);
            Assert.InRange(picture.GetProperty("height").GetInt32(), 200, 1000);
            Assert.InRange(picture.GetProperty("drawn").GetDouble(), 0.02, 0.9);
            Assert.True(picture.GetProperty("colours").GetInt32() >= 4, picture.GetRawText());
        }

        Assert.True(new FileInfo(Path.Combine(pictures, "notebook.png")).Length > 20_000);
        Assert.Equal("Gravity.FromSpecific", Text("completed"));
        Assert.Contains("Verdict", found.GetProperty("offered").EnumerateArray().Select(o => o.GetString()!.Trim()));
        Assert.True(found.GetProperty("busy").GetBoolean());
        Assert.Contains("The cell was interrupted. Variables of earlier cells are kept.", Text("stopped"), StringComparison.Ordinal);
        Assert.Contains("still here: ", Text("after"), StringComparison.Ordinal);

        string Text(string name) => found.GetProperty(name).GetString()!;
        int Number(string name) => found.GetProperty(name).GetInt32();
    }

    private static async Task Answers(int port, Process server)
    {
        using var client = new HttpClient();
        var until = DateTime.UtcNow.AddMinutes(1);
        while (true)
        {
            Assert.False(server.HasExited, "the notebook server ended");
            try
            {
                using var answer = await client.GetAsync(new Uri($"http://127.0.0.1:{port}/api"));
                if (answer.IsSuccessStatusCode) return;
            }
            catch (HttpRequestException) when (DateTime.UtcNow < until)
            {
            }

            await Task.Delay(200);
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from)) File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        foreach (var folder in Directory.EnumerateDirectories(from).Where(f => Path.GetFileName(f) is not ("work" or "pictures"))) Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
    }

    /// <summary>A browser, Node.js and the driver from npm.</summary>
    private static class Tools
    {
        public static string? Chromium { get; } = OnPath("chromium") ?? OnPath("chromium-browser");

        public static string? WhyNot => Environment.GetEnvironmentVariable("CI") == "true" ? null
            : DebianJupyter.WhyNot
            ?? (Chromium is null ? "Chromium is not installed on this machine."
            : OnPath("node") is null ? "Node.js is not installed on this machine."
            : !Directory.Exists(Repository.Path("tests", "browser", "node_modules", "playwright-core")) ? "The browser's driver is not installed: run npm ci in tests/browser." : null);

        private static string? OnPath(string program) =>
            (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
    }

    private sealed class BrowserFactAttribute : FactAttribute
    {
        public BrowserFactAttribute() => Skip = Tools.WhyNot;
    }
}
