using System.Runtime.InteropServices;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>A kernel as a process of its own: what <c>splitbatch kernel start</c> does.</summary>
public static class KernelProcess
{
    private static readonly TimeSpan ParentCheck = TimeSpan.FromSeconds(2);

    /// <summary>
    /// Serves the connection file until a client shuts the kernel down, the process is told to end, or the Jupyter server that started it
    /// is gone. The process should exit afterwards: a cell may still be running on its own thread.
    /// </summary>
    /// <exception cref="InvalidDataException">The connection file cannot be used.</exception>
    public static async Task RunAsync(string connectionFile, Func<ICellHost> makeHost)
    {
        var connection = ConnectionFile.Read(connectionFile);
        var log = KernelLog.OpenStandardError();
        using var end = new CancellationTokenSource();
        var host = makeHost();
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, c => Take(c, end.Cancel));
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, c => Take(c, () => _ = host.InterruptAsync()));
        _ = WatchParentAsync(end);
        await JupyterKernel.ServeAsync(connection, host, log, end.Token).ConfigureAwait(false);
    }

    private static void Take(PosixSignalContext signal, Action action)
    {
        signal.Cancel = true;
        action();
    }

    /// <summary>Jupyter tells a kernel who started it. When that process is gone nobody can reach the kernel any more.</summary>
    private static async Task WatchParentAsync(CancellationTokenSource end)
    {
        if (OperatingSystem.IsWindows() || !int.TryParse(Environment.GetEnvironmentVariable("JPY_PARENT_PID"), out var parent))
        {
            return;
        }

        while (IsAlive(parent))
        {
            await Task.Delay(ParentCheck, end.Token).ConfigureAwait(false);
        }

        await end.CancelAsync().ConfigureAwait(false);
    }

    private static bool IsAlive(int process)
    {
        if (OperatingSystem.IsLinux())
        {
            return Directory.Exists($"/proc/{process}");
        }

        try
        {
            using var found = System.Diagnostics.Process.GetProcessById(process);
            return !found.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
