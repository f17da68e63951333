using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch check</c>: everything that is wrong or dubious in a trial folder.</summary>
public sealed class CheckCommand(IAnsiConsole console) : Command<CheckCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var faults = Trial.Check(settings.Folder);
        FaultReport.Write(console, new TrialFolder(settings.Folder).Name, faults);
        if (faults.Any(fault => fault.Severity == Severity.Error)) return 1;
        if (Trial.Open(settings.Folder).LatestSeal is { } seal) console.WriteLine($"The plan: {seal}.");
        return 0;
    }

    /// <summary>The folder.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The trial folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The trial folder to look through. Nothing in it is changed.")]
        public required string Folder { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() => SealReport.FolderIsThere(Folder);
    }
}
