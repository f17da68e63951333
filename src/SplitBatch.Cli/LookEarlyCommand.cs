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
    public sealed class Settings : PanelSettings
    {
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
                : base.Validate();
    }
}
