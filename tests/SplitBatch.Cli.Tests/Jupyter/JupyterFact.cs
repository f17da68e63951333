namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// A test that needs Debian's Jupyter: skipped, with the reason, on a machine without it; never skipped in continuous integration.
/// </summary>
internal sealed class JupyterFactAttribute : FactAttribute
{
    public JupyterFactAttribute() => Skip = Installed.Reason(() => DebianJupyter.Missing);
}

/// <summary>As <see cref="JupyterFactAttribute"/>, for tests with data.</summary>
internal sealed class JupyterTheoryAttribute : TheoryAttribute
{
    public JupyterTheoryAttribute() => Skip = Installed.Reason(() => DebianJupyter.Missing);
}

/// <summary>The Jupyter packages that Debian brings.</summary>
internal static class DebianJupyter
{
    private static readonly Lazy<bool> There =
        new(() => Installed.Runs(Installed.DebianPython, "-c", "import jupyter_kernel_test, nbclient, nbconvert, notebook"));

    /// <summary>Why tests with Jupyter cannot be run here; null when they can.</summary>
    public static string? Missing => There.Value ? null
        : "Jupyter is not installed on this machine: apt-get install python3-jupyter-kernel-test python3-nbclient jupyter-nbconvert "
            + "jupyter-notebook.";
}
