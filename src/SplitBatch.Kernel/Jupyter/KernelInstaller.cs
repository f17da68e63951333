using System.Text.Json;
using SplitBatch.Display;
using SplitBatch.Display.Notebooks;
using SplitBatch.Kernel.Jupyter.Wire;
using SplitBatch.Kernel.Packages;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>Writes and removes the folder by which Jupyter knows this kernel.</summary>
public static class KernelInstaller
{
    /// <summary>
    /// Writes <c>kernel.json</c> and, once for all charts, the chart library, which the Jupyter server hands to the page without a
    /// network. An earlier installation in the same place is replaced.
    /// </summary>
    /// <param name="kernels">The folder that holds kernels; made when missing.</param>
    /// <param name="launch">The words that start the splitbatch command.</param>
    /// <returns>The kernel's own folder.</returns>
    public static string Install(string kernels, IReadOnlyList<string> launch)
    {
        var folder = Path.Combine(kernels, KernelSpec.Name);
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "plotly.min.js"), NotebookDisplay.ChartScript);
        Describe(kernels, launch);
        if (Path.Combine(folder, CompiledCopy.FolderName) is var copy && Directory.Exists(copy)) Directory.Delete(copy, recursive: true);
        return folder;
    }

    /// <summary>Writes <c>kernel.json</c> alone, into a folder that is there.</summary>
    /// <param name="kernels">The folder that holds kernels.</param>
    /// <param name="launch">The words that start the splitbatch command.</param>
    public static void Describe(string kernels, IReadOnlyList<string> launch)
    {
        var place = Path.Combine(kernels, KernelSpec.Name, "kernel.json");
        File.WriteAllText(place + ".new", JsonSerializer.Serialize(KernelSpec.StartedBy(launch), KernelSpecJson.Indented.KernelSpec)
            + "\n");
        File.Move(place + ".new", place, overwrite: true);
    }

    /// <summary>The <c>dotnet</c> that runs this process, or that on the path.</summary>
    public static string Dotnet() => Packages.SdkProject.Dotnet();

    /// <summary>Removes the kernel's folder. Null when there was none.</summary>
    /// <exception cref="InvalidDataException">The folder of that name is another kernel's.</exception>
    public static string? Remove(string kernels)
    {
        var folder = Path.Combine(kernels, KernelSpec.Name);
        var description = Path.Combine(folder, "kernel.json");
        if (!Directory.Exists(folder))
        {
            return null;
        }

        if (!File.Exists(description) || !File.ReadAllText(description).Contains("--connection-file", StringComparison.Ordinal))
        {
            throw new InvalidDataException($"{folder} was not written by this command; remove it by hand if it is not wanted");
        }

        Directory.Delete(folder, recursive: true);
        return folder;
    }

    /// <summary>The words that start the running command again: its own program, or dotnet and its library.</summary>
    public static IReadOnlyList<string> ThisCommand()
    {
        var program = Environment.ProcessPath ?? "dotnet";
        return Path.GetFileNameWithoutExtension(program) is "dotnet"
            ? [program, Path.GetFullPath(Environment.GetCommandLineArgs()[0])]
            : [program];
    }
}
