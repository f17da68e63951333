using System.Diagnostics;

namespace SplitBatch.Cli.Jupyter;

/// <summary>A test that needs Debian's Jupyter: skipped, with the reason, on a machine without it; never skipped in continuous integration.</summary>
internal sealed class JupyterFactAttribute : FactAttribute
{
    public JupyterFactAttribute() => Skip = DebianJupyter.WhyNot;
}

/// <summary>As <see cref="JupyterFactAttribute"/>, for tests with data.</summary>
internal sealed class JupyterTheoryAttribute : TheoryAttribute
{
    public JupyterTheoryAttribute() => Skip = DebianJupyter.WhyNot;
}

/// <summary>The Python and the Jupyter packages that Debian brings.</summary>
internal static class DebianJupyter
{
    /// <summary>Debian's own Python; another one on the path does not see Debian's packages.</summary>
    public const string Python = "/usr/bin/python3";

    private static readonly Lazy<string?> Missing = new(() =>
    {
        if (Environment.GetEnvironmentVariable("CI") == "true") return null;
        const string packages = "Jupyter is not installed on this machine: apt-get install python3-jupyter-kernel-test python3-nbclient jupyter-nbconvert jupyter-notebook.";
        if (!File.Exists(Python)) return packages;
        using var process = Process.Start(new ProcessStartInfo(Python, ["-c", "import jupyter_kernel_test, nbclient, nbconvert, notebook"]) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? null : packages;
    });

    /// <summary>Why tests with Jupyter cannot be run here; null when they can.</summary>
    public static string? WhyNot => Missing.Value;
}
