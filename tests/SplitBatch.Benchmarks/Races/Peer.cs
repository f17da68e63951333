using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace SplitBatch.Benchmarks.Races;

/// <summary>A script that does the same work and prints how many milliseconds each of its rounds took, one to a line.</summary>
/// <param name="Name">The program and what it uses.</param>
/// <param name="Program">The program that runs it.</param>
/// <param name="Script">The script, in the folder <c>peers</c>.</param>
internal sealed record Peer(string Name, string Program, string Script)
{
    public static Peer Python(string script) => new("NumPy and SciPy", Installed.DebianPython, script);

    public static Peer R(string script) => new("R", "Rscript", script);

    /// <summary>Where peers' scripts stand.</summary>
    public static string Folder { get; } = Path.Combine(Path.GetDirectoryName(Here())!, "..", "peers");

    /// <summary>The best of the script's rounds in milliseconds, on one thread; null where the program is not installed.</summary>
    public double? Best()
    {
        var start = new ProcessStartInfo(Program, [Path.Combine(Folder, Script)]) { RedirectStandardOutput = true };
        foreach (string variable in (string[])["OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"])
            start.Environment[variable] = "1";
        try
        {
            using var process = System.Diagnostics.Process.Start(start)!;
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Min(line => double.Parse(line, CultureInfo.InvariantCulture))
                : throw new InvalidOperationException($"{Script} ended with {process.ExitCode}: {said}");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static string Here([CallerFilePath] string path = "") => path;
}
