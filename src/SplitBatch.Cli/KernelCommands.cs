using Spectre.Console.Cli;

namespace SplitBatch.Cli;

/// <summary>The branch <c>splitbatch kernel</c>.</summary>
public static class KernelCommands
{
    /// <summary>Adds <c>kernel install</c>, <c>kernel start</c> and <c>kernel remove</c>.</summary>
    public static void AddKernel(this IConfigurator config) => config.AddBranch("kernel", kernel =>
    {
        kernel.SetDescription("The C# kernel for Jupyter notebooks.");
        kernel.AddCommand<KernelInstallCommand>("install").WithDescription("Install the kernel in Jupyter.")
            .WithExample("kernel", "install").WithExample("kernel", "install", "--prefix", "/opt/class/venv");
        kernel.AddCommand<KernelStartCommand>("start").WithDescription("Run the kernel; Jupyter calls this.")
            .WithExample("kernel", "start", "--connection-file", "kernel-1.json");
        kernel.AddCommand<KernelRemoveCommand>("remove").WithDescription("Remove the kernel from Jupyter.")
            .WithExample("kernel", "remove");
    });
}
