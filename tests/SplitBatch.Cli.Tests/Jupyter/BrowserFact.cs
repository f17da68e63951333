namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// A test that needs Debian's Jupyter, a browser, Node.js and the browser's driver: skipped, with the reason, on a machine without them;
/// never skipped in continuous integration.
/// </summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Installed.Reason(() => BrowserTools.Missing);
}

/// <summary>As <see cref="BrowserFactAttribute"/>, for a test that needs JupyterLab's packages besides.</summary>
internal sealed class LabFactAttribute : FactAttribute
{
    public LabFactAttribute() => Skip = Installed.Reason(() => BrowserTools.LabMissing);
}

/// <summary>A browser, Node.js, the driver and JupyterLab's packages from npm.</summary>
internal static class BrowserTools
{
    /// <summary>The browser's program; null where there is none.</summary>
    public static string? Chromium { get; } = Installed.Program("chromium", "chromium-browser");

    /// <summary>Why notebooks cannot be opened in a browser here; null when they can.</summary>
    public static string? Missing => DebianJupyter.Missing
        ?? (Chromium is null ? "Chromium is not installed on this machine."
        : Installed.Program("node") is null ? "Node.js is not installed on this machine."
        : !Directory.Exists(Repository.Path("tests", "browser", "node_modules", "playwright-core"))
            ? "The browser's driver is not installed: run npm ci in tests/browser."
            : null);

    /// <summary>Why JupyterLab cannot be built and served here; null when it can.</summary>
    public static string? LabMissing => Missing
        ?? (!Directory.Exists(Repository.Path("tests", "browser", "lab", "node_modules", "@jupyterlab"))
            ? "JupyterLab's packages are not installed: run npm ci --ignore-scripts in tests/browser/lab."
        : !LabServer.Value ? "JupyterLab's server is not installed on this machine: apt-get install python3-jupyterlab-server." : null);

    private static readonly Lazy<bool> LabServer = new(() => Installed.Runs(Installed.DebianPython, "-c", "import jupyterlab_server"));
}
