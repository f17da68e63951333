namespace SplitBatch.Kernel.Jupyter;

/// <summary>Where Jupyter looks for kernels on this system.</summary>
public static class KernelFolders
{
    /// <summary>For this user alone; <c>JUPYTER_DATA_DIR</c> is honoured, as Jupyter does.</summary>
    public static string User()
    {
        if (Environment.GetEnvironmentVariable("JUPYTER_DATA_DIR") is { Length: > 0 } data)
        {
            return Path.Combine(data, "kernels");
        }

        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        if (OperatingSystem.IsWindows())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter", "kernels");
        }

        if (OperatingSystem.IsMacOS())
        {
            return Path.Combine(home, "Library", "Jupyter", "kernels");
        }

        var share = Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } xdg ? xdg
            : Path.Combine(home, ".local", "share");
        return Path.Combine(share, "jupyter", "kernels");
    }

    /// <summary>For everyone who uses this machine.</summary>
    public static string System() => OperatingSystem.IsWindows()
        ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.CommonApplicationData), "jupyter", "kernels")
        : "/usr/local/share/jupyter/kernels";

    /// <summary>For one environment, such as a virtual environment of Python.</summary>
    public static string Prefix(string prefix) => Path.Combine(Path.GetFullPath(prefix), "share", "jupyter", "kernels");
}
