using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch declare</c>: shows a plan in plain words, asks, and seals it.</summary>
public sealed class DeclareCommand(IAnsiConsole console) : Command<DeclareCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var trial = Trial.Open(settings.Folder);
        if (trial.LatestSeal is { } done && trial.Plan.Unrecorded.Count == 0)
        {
            console.WriteLine($"Sealed already: {done}.");
            return 0;
        }

        console.WriteLine(trial.Declare().ToString());
        console.WriteLine();
        if (!settings.Yes)
        {
            if (!console.Profile.Capabilities.Interactive)
            {
                console.WriteLine("Nothing is sealed. Nobody is there to ask: run it in a terminal, or with --yes.");
                return 2;
            }

            if (!console.Confirm("Seal this plan? It cannot be changed without a trace afterwards.", defaultValue: false))
            {
                console.WriteLine("Nothing is sealed. Change trial.json and run this again.");
                return 1;
            }
        }

        var seal = trial.Seal().LatestSeal!;
        console.Tell(seal);
        console.WriteLine($"Next step: publish the fingerprint, then: splitbatch serve {settings.Folder}");
        return 0;
    }

    /// <summary>The folder.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The trial folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The trial folder.")]
        public required string Folder { get; init; }

        /// <summary>Ask nothing.</summary>
        [CommandOption("-y|--yes")]
        [Description("Seal without asking.")]
        public bool Yes { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() => SealReport.FolderIsThere(Folder);
    }
}
