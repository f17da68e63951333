using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SplitBatch.Cli;

/// <summary>What a command about one panel asks for.</summary>
public abstract class PanelSettings : CommandSettings
{
    /// <summary>The trial folder.</summary>
    [CommandArgument(0, "<FOLDER>")]
    [Description("The trial folder.")]
    public required string Folder { get; init; }

    /// <summary>The panel.</summary>
    [CommandOption("--panel <NAME>")]
    [Description("The panel's name in trial.json.")]
    [DefaultValue("main")]
    public string Panel { get; init; } = "main";

    /// <inheritdoc/>
    public override ValidationResult Validate() => SealReport.FolderIsThere(Folder);
}
