using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Jupyter;

namespace SplitBatch.Cli;

/// <summary>Where a kernel is installed or removed: one place, the user's own when none is named.</summary>
public class KernelPlaceSettings : CommandSettings
{
    /// <summary>This user.</summary>
    [CommandOption("--user")]
    [Description("For this user alone (the default).")]
    public bool User { get; init; }

    /// <summary>One environment.</summary>
    [CommandOption("--prefix <FOLDER>")]
    [Description("For one environment, such as a Python virtual environment: below FOLDER/share/jupyter/kernels.")]
    public string? Prefix { get; init; }

    /// <summary>Everyone.</summary>
    [CommandOption("--system")]
    [Description("For everyone on this machine; needs the right to write there.")]
    public bool System { get; init; }

    /// <summary>The folder that holds kernels.</summary>
    public string Folder() => System ? KernelFolders.System() : Prefix is { } prefix ? KernelFolders.Prefix(prefix) : KernelFolders.User();

    /// <inheritdoc/>
    public override ValidationResult Validate()
    {
        var places = (User ? 1 : 0) + (Prefix is null ? 0 : 1) + (System ? 1 : 0);
        return places > 1
            ? ValidationResult.Error("Give one place: --user, --prefix FOLDER or --system.")
            : Prefix is { } prefix && !Directory.Exists(prefix)
                ? ValidationResult.Error($"--prefix: there is no folder {prefix}.")
                : ValidationResult.Success();
    }
}
