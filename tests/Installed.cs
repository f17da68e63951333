using System.ComponentModel;
using System.Diagnostics;

namespace SplitBatch;

/// <summary>
/// What this machine has besides the .NET SDK. Where something is absent, the tests that need it are skipped by name and reason; in
/// continuous integration they never are.
/// </summary>
internal static class Installed
{
    /// <summary>Debian's own Python; another one on the path does not see Debian's packages.</summary>
    public const string DebianPython = "/usr/bin/python3";

    /// <summary>
    /// The reason to skip a test; none in continuous integration, where everything must be there and nothing is looked for.
    /// </summary>
    /// <param name="missing">Says what is missing, in words; null where all is there.</param>
    public static string? Reason(Func<string?> missing) => Environment.GetEnvironmentVariable("CI") == "true" ? null : missing();

    /// <summary>The first of some programs that the path holds; null for none.</summary>
    public static string? Program(params string[] names) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .SelectMany(folder => names.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists);

    /// <summary>Whether a program is there and ends well.</summary>
    public static bool Runs(string program, params string[] words)
    {
        try
        {
            using var process =
                Process.Start(new ProcessStartInfo(program, words) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            var error = process.StandardError.ReadToEndAsync();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            _ = error.Result;
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}
