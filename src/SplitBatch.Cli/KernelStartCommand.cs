using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch kernel start</c>: what Jupyter calls.</summary>
public sealed class KernelStartCommand : AsyncCommand<KernelStartCommand.Settings>
{
    /// <summary>
    /// Serves the kernel when the words are exactly those of an installed kernel, before any command line is parsed: it saves a part of
    /// the start that a student waits for. Its exit code; null when they are not.
    /// </summary>
    public static int? TryStart(string[] args)
    {
        if (args is not ["kernel", "start", "--connection-file", var file] || !File.Exists(file))
        {
            return null;
        }

        return KernelProcess.RunAsync(file, () => new KernelHost()).GetAwaiter().GetResult();
    }

    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        KernelProcess.RunAsync(settings.ConnectionFile, () => new KernelHost());

    /// <summary>The one thing a kernel needs to know.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The connection file.</summary>
        [CommandOption("--connection-file <FILE>", isRequired: true)]
        [Description("The connection file that the Jupyter client wrote.")]
        public required string ConnectionFile { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            File.Exists(ConnectionFile) ? ValidationResult.Success()
                : ValidationResult.Error($"--connection-file: there is no file {ConnectionFile}.");
    }
}
