using System.ComponentModel;
using System.Diagnostics;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Jupyter;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch kernel install</c>.</summary>
public sealed class KernelInstallCommand(IAnsiConsole console) : AsyncCommand<KernelInstallCommand.Settings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var launch = KernelInstaller.ThisCommand();
        var folder = KernelInstaller.Install(settings.Folder(), launch);
        console.WriteLine($"The kernel 'C# (SplitBatch)' is installed in {folder}.");
        if (!settings.AsBuilt) await CompileAsync(settings.Folder(), cancellationToken);
        console.WriteLine($"Start Jupyter and choose it, or: jupyter notebook. Notebooks name it '{KernelSpec.Name}'.");
        console.WriteLine("Before you uninstall splitbatch, run splitbatch kernel remove; or remove that folder by hand later.");
        return 0;
    }

    private async Task CompileAsync(string kernels, CancellationToken cancellation)
    {
        var program = typeof(KernelInstallCommand).Assembly.Location;
        if (CompiledCopy.IsCompiled(program)) return;
        console.WriteLine("Now a copy is compiled for this machine, so that the kernel starts sooner. It takes a minute or more, once; "
            + "the kernel can be used meanwhile.");
        var clock = Stopwatch.StartNew();
        var copy = Path.Combine(kernels, KernelSpec.Name, CompiledCopy.FolderName);
        var fault = await CompiledCopy.MakeAsync(program, copy, cancellation);
        if (fault is null)
        {
            KernelInstaller.Describe(kernels, [KernelInstaller.Dotnet(), Path.Combine(copy, Path.GetFileName(program))]);
            console.WriteLine($"Compiled in {Printed.Fixed(clock.Elapsed.TotalSeconds, 0)} seconds; the kernel starts from {copy}. After "
                + $"an update of the command, install the kernel again.");
        }
        else
        {
            console.WriteLine($"The copy could not be made, and the kernel starts more slowly without it: {fault}");
        }
    }

    /// <summary>Where, and how.</summary>
    public sealed class Settings : KernelPlaceSettings
    {
        /// <summary>No compiled copy.</summary>
        [CommandOption("--as-built")]
        [Description("Start the command as it is built, without compiling a copy of it for this machine first.")]
        public bool AsBuilt { get; init; }
    }
}
