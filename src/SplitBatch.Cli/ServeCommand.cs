using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Display.Sheets;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch serve</c>: the sealed key of a declared panel, and its sheets on paper.</summary>
public sealed class ServeCommand(IAnsiConsole console) : Command<ServeCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var trial = Trial.Open(settings.Folder).Serve(settings.Panel);
        var plan = trial.Panel(settings.Panel).Serving!;
        console.WriteLine($"The key is {Path.Combine(settings.Folder, ServingKeyFile.NameOf(plan.Panel))}: {plan.Sets.Count} sets, {plan.Balance}. Keep it from servers and tasters.");
        try
        {
            var sheets = PanelSheets.Of(trial, settings.Panel).SaveTo(Path.Combine(settings.Folder, "sheets"));
            console.WriteLine($"{sheets.Count} sheets for the printer are in {Path.Combine(settings.Folder, "sheets")}; those in its folder sealed show which beer is which.");
        }
        catch (TrialIncompleteException missing)
        {
            console.WriteLine($"No sheets were printed. {missing.Message} Then run this again.");
        }

        console.WriteLine($"Next step: type each answer into {Path.Combine(settings.Folder, BallotFile.NameOf(plan.Panel))}, then: splitbatch check {settings.Folder}");
        return 0;
    }

    /// <summary>The folder and the panel.</summary>
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

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            Directory.Exists(Folder) ? ValidationResult.Success() : ValidationResult.Error($"There is no folder {Folder}.");
    }
}
