using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Jupyter;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch kernel remove</c>.</summary>
public sealed class KernelRemoveCommand(IAnsiConsole console) : Command<KernelPlaceSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, KernelPlaceSettings settings, CancellationToken cancellationToken)
    {
        var kernels = settings.Folder();
        var removed = KernelInstaller.Remove(kernels);
        console.WriteLine(removed is null ? $"No kernel '{KernelSpec.Name}' is installed in {kernels}." : $"Removed {removed}.");
        return removed is null ? 1 : 0;
    }
}
