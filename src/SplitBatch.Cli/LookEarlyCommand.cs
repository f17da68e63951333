using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch look-early</c>: the count of a panel that is still open, kept as a departure.</summary>
public sealed class LookEarlyCommand(IAnsiConsole console) : Command<LookEarlyCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        console.WriteLine(Trial.Open(settings.Folder).LookEarly(settings.Panel, settings.Because, settings.Who ?? "").ToString());
        return 0;
    }

    /// <summary>The folder, the panel and the reason.</summary>
    public sealed class Settings : CommandSettings
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

        /// <summary>Why.</summary>
        [CommandOption("--because <REASON>", isRequired: true)]
        [Description("Why the count cannot wait. It will stand in the write-up, before the result.")]
        public required string Because { get; init; }

        /// <summary>Who.</summary>
        [CommandOption("--who <NAME>")]
        [Description("Who looks.")]
        public string? Who { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            string.IsNullOrWhiteSpace(Because)
                ? ValidationResult.Error("Say why the count cannot wait: --because \"...\".")
                : SealReport.FolderIsThere(Folder);
    }
}
