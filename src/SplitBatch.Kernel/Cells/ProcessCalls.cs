using System.ComponentModel;
using System.Diagnostics;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// What a cell's calls to the process's own doings become: none ends the kernel, and what a program prints that a cell starts is the
/// cell's.
/// Names and parameters are those of the calls they stand for.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class ProcessCalls
{
    /// <summary>In place of <see cref="Environment.Exit"/>.</summary>
    public static void Exit(int exitCode) => throw Refusal($"Environment.Exit({exitCode})");

    /// <summary>In place of <see cref="Environment.FailFast(string)"/>.</summary>
    public static void FailFast(string? message) => throw Refusal($"Environment.FailFast: {message}");

    /// <summary>In place of <see cref="Environment.FailFast(string, Exception)"/>.</summary>
    public static void FailFast(string? message, Exception? exception) =>
        throw new InvalidOperationException(Refusal($"Environment.FailFast: {message}").Message, exception);

    /// <summary>In place of <see cref="Process.Kill()"/>.</summary>
    public static void Kill(Process process) => Kill(process, entireProcessTree: false);

    /// <summary>In place of <see cref="Process.Kill(bool)"/>.</summary>
    public static void Kill(Process process, bool entireProcessTree)
    {
        ArgumentNullException.ThrowIfNull(process);
        if (process.Id == Environment.ProcessId) throw Refusal("Process.Kill on the kernel itself");
        process.Kill(entireProcessTree);
    }

    /// <summary>In place of <see cref="Process.Start(string)"/>.</summary>
    public static Process? Start(string fileName) => Start(new ProcessStartInfo(fileName));

    /// <summary>In place of <see cref="Process.Start(string, string)"/>.</summary>
    public static Process? Start(string fileName, string arguments) => Start(new ProcessStartInfo(fileName, arguments));

    /// <summary>In place of <see cref="Process.Start(string, IEnumerable{string})"/>.</summary>
    public static Process? Start(string fileName, IEnumerable<string> arguments) => Start(new ProcessStartInfo(fileName, arguments));

    /// <summary>In place of <see cref="Process.Start(ProcessStartInfo)"/>.</summary>
    public static Process? Start(ProcessStartInfo startInfo)
    {
        ArgumentNullException.ThrowIfNull(startInfo);
        var shown = Redirect(startInfo);
        var process = Process.Start(startInfo);
        if (shown && process is not null) Show(process);
        return process;
    }

    /// <summary>In place of <see cref="Process.Start()"/>.</summary>
    public static bool Start(Process process)
    {
        ArgumentNullException.ThrowIfNull(process);
        var shown = Redirect(process.StartInfo);
        var started = process.Start();
        if (shown && started) Show(process);
        return started;
    }

    private static bool Redirect(ProcessStartInfo info)
    {
        if (RunningCell.Current is null || info.UseShellExecute || info.RedirectStandardOutput || info.RedirectStandardError) return false;
        return info.RedirectStandardOutput = info.RedirectStandardError = true;
    }

    private static void Show(Process process)
    {
        var cell = RunningCell.Current!;
        process.OutputDataReceived += (_, line) => cell.Write(false, line.Data is { } text ? text + "\n" : "");
        process.ErrorDataReceived += (_, line) => cell.Write(true, line.Data is { } text ? text + "\n" : "");
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    private static InvalidOperationException Refusal(string call) => new($"A cell cannot end the kernel ({call}).");
}
