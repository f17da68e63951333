using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// A Jupyter server on this machine alone, over a copy of the project's notebooks and trials; it ends when it is disposed of.
/// </summary>
internal sealed class NotebookServer : IAsyncDisposable
{
    private readonly Process _process;

    private NotebookServer(Process process, int port)
    {
        _process = process;
        Address = $"http://127.0.0.1:{port}";
    }

    /// <summary>Where it answers, without a slash at the end.</summary>
    public string Address { get; }

    /// <summary>Starts a server and waits until it answers.</summary>
    /// <param name="kernel">The kernel that it finds.</param>
    /// <param name="folder">The folder that it serves; <c>notebooks</c> and <c>data-demo</c> are copied into it.</param>
    /// <param name="words">The Python program that serves, and its words.</param>
    /// <param name="application">The name under which the program knows its options.</param>
    public static async Task<NotebookServer> StartAsync(InstalledKernel kernel, string folder, IEnumerable<string> words,
        string application)
    {
        Copy(Repository.Path("notebooks"), Path.Combine(folder, "notebooks"));
        Copy(Repository.Path("data-demo"), Path.Combine(folder, "data-demo"));
        var port = FreePort();
        var root = application == "NotebookApp" ? "notebook_dir" : "root_dir";
        var process = kernel.Start(
            Installed.DebianPython,
            [.. words, "--no-browser", "--allow-root", "--ip=127.0.0.1", $"--port={port}", "--port-retries=0", $"--{application}.token=",
                $"--{application}.password=", $"--{application}.{root}={folder}"],
            folder);
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var server = new NotebookServer(process, port);
        try
        {
            await server.Answers();
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }

        return server;
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    private async Task Answers()
    {
        using var client = new HttpClient();
        var until = DateTime.UtcNow.AddMinutes(1);
        while (true)
        {
            Assert.False(_process.HasExited, "the notebook server ended");
            try
            {
                using var answer = await client.GetAsync(new Uri($"{Address}/api"));
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
        foreach (var folder in Directory.EnumerateDirectories(from).Where(f => Path.GetFileName(f) is not ("work" or "pictures")))
            Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
    }
}
