using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Jupyter.Install;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch kernel install</c>.</summary>
public sealed class KernelInstallCommand(IAnsiConsole console) : Command<KernelPlaceSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, KernelPlaceSettings settings, CancellationToken cancellationToken)
    {
        var folder = KernelInstaller.Install(settings.Folder(), KernelInstaller.ThisCommand());
        console.WriteLine($"The kernel 'C# (SplitBatch)' is installed in {folder}.");
        console.WriteLine($"Start Jupyter and choose it, or: jupyter notebook. Notebooks name it '{KernelSpec.Name}'.");
        return 0;
    }
}
