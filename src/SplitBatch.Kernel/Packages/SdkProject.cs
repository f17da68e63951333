using System.Diagnostics;
using System.Runtime.InteropServices;

namespace SplitBatch.Kernel.Packages;

/// <summary>
/// A project in a temporary folder, on which the .NET SDK is called: apart from whatever build settings lie above or run around it.
/// </summary>
internal static class SdkProject
{
    /// <summary>Writes the project, and empty build settings beside it so that none are looked for above.</summary>
    public static void Write(string folder, string name, string project)
    {
        foreach (var empty in new[] { "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props" })
            File.WriteAllText(Path.Combine(folder, empty), "<Project />");
        File.WriteAllText(Path.Combine(folder, name), project);
    }

    /// <summary>Calls the SDK in the folder and waits.</summary>
    /// <param name="folder">Where to call it.</param>
    /// <param name="words">The words after <c>dotnet</c>.</param>
    /// <param name="cancellation">Ends the call and what it started.</param>
    /// <returns>Its exit code, and all that it said, in English.</returns>
    /// <exception cref="System.ComponentModel.Win32Exception">There is no <c>dotnet</c>.</exception>
    public static async Task<(int ExitCode, string Said)> CallAsync(string folder, IEnumerable<string> words,
        CancellationToken cancellation)
    {
        var start = new ProcessStartInfo(Dotnet(), words)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        foreach (var own in start.Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
            start.Environment.Remove(own);
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output =
            Task.WhenAll(process.StandardOutput.ReadToEndAsync(CancellationToken.None),
            process.StandardError.ReadToEndAsync(CancellationToken.None));
        try
        {
            await process.WaitForExitAsync(cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }

        return (process.ExitCode, string.Concat(await output.ConfigureAwait(false)));
    }

    /// <summary>The <c>dotnet</c> that runs this process, or the one on the path.</summary>
    public static string Dotnet()
    {
        var name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        string?[] candidates =
        [
            Environment.ProcessPath is { } program && Path.GetFileName(program) == name ? program : null,
            Environment.GetEnvironmentVariable("DOTNET_HOST_PATH"),
            Environment.GetEnvironmentVariable("DOTNET_ROOT") is { Length: > 0 } root ? Path.Combine(root, name) : null,
            Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name)),
        ];
        return candidates.FirstOrDefault(File.Exists) ?? name;
    }
}
