using System.Diagnostics;

namespace SplitBatch.Cli.Jupyter;

/// <summary>A test that needs Debian's Jupyter, a browser, Node.js and the browser's driver: skipped, with the reason, on a machine without them; never skipped in continuous integration.</summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = BrowserTools.WhyNot;
}

/// <summary>As <see cref="BrowserFactAttribute"/>, for a test that needs JupyterLab's packages besides.</summary>
internal sealed class LabFactAttribute : FactAttribute
{
    public LabFactAttribute() => Skip = BrowserTools.WhyNoLab;
}

/// <summary>A browser, Node.js, the driver and JupyterLab's packages from npm.</summary>
internal static class BrowserTools
{
    /// <summary>The browser's program; null where there is none.</summary>
    public static string? Chromium { get; } = OnPath("chromium") ?? OnPath("chromium-browser");

    /// <summary>Why notebooks cannot be opened in a browser here; null when they can.</summary>
    public static string? WhyNot => Environment.GetEnvironmentVariable("CI") == "true" ? null
        : DebianJupyter.WhyNot
        ?? (Chromium is null ? "Chromium is not installed on this machine."
        : OnPath("node") is null ? "Node.js is not installed on this machine."
        : !Directory.Exists(Repository.Path("tests", "browser", "node_modules", "playwright-core")) ? "The browser's driver is not installed: run npm ci in tests/browser." : null);

    /// <summary>Why JupyterLab cannot be built and served here; null when it can.</summary>
    public static string? WhyNoLab => Environment.GetEnvironmentVariable("CI") == "true" ? null
        : WhyNot
        ?? (!Directory.Exists(Repository.Path("tests", "browser", "lab", "node_modules", "@jupyterlab")) ? "JupyterLab's packages are not installed: run npm ci --ignore-scripts in tests/browser/lab."
        : !LabServer.Value ? "JupyterLab's server is not installed on this machine: apt-get install python3-jupyterlab-server." : null);

    private static readonly Lazy<bool> LabServer = new(() =>
    {
        using var process = Process.Start(new ProcessStartInfo(DebianJupyter.Python, ["-c", "import jupyterlab_server"]) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    });

    private static string? OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
