using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch amend</c>: puts a change of a sealed plan on record, with the reason.</summary>
public sealed class AmendCommand(IAnsiConsole console) : Command<AmendCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var trial = Trial.Open(settings.Folder);
        if (trial.LatestSeal is not null && trial.Plan.Unrecorded.Count == 0)
        {
            console.WriteLine("Nothing to amend: trial.json and the newest seal say the same.");
            return 0;
        }

        foreach (var difference in trial.Plan.Unrecorded) console.WriteLine($"{difference}.");
        var amended = trial.Amend(settings.Because);
        console.Tell(amended.LatestSeal!);
        foreach (var panel in amended.Panels.Where(panel => panel.Custody.Changes.Count > 0))
        {
            console.WriteLine(
                $"Ballots of panel {panel.Name} were in already, so this is a departure: it goes before the result, which is now a lead "
                    + $"and not a test. "
                + "The plan sealed before the first ballot decides.");
        }

        if (amended.Panels.Any(panel => panel.Codes is not null && panel.Ballots.Count == 0))
        {
            console.WriteLine($"Run splitbatch serve {settings.Folder} again: what was printed before carries the fingerprint of the "
                + $"seal before.");
        }

        return 0;
    }

    /// <summary>The folder and the reason.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The trial folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The trial folder, with trial.json as it is to be from now on.")]
        public required string Folder { get; init; }

        /// <summary>Why.</summary>
        [CommandOption("--because <REASON>", isRequired: true)]
        [Description("Why the plan is changed, for whoever reads the write-up.")]
        public required string Because { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            string.IsNullOrWhiteSpace(Because)
                ? ValidationResult.Error("Say why the plan is changed: --because \"...\".")
                : SealReport.FolderIsThere(Folder);
    }
}
