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
        var trial = Trial.Open(settings.Folder).Serve(settings.Panel, keyFolder: settings.KeyFolder);
        var panel = trial.Panel(settings.Panel);
        var plan = panel.Serving ?? trial.KeyKeptIn(settings.KeyFolder, panel.Name);
        console.WriteLine($"The key is {Path.Combine(settings.KeyFolder ?? settings.Folder, ServingKeyFile.NameOf(plan.Panel))}: "
            + $"{plan.Sets.Count} sets, {plan.Balance}. Keep it from servers and tasters.");
        try
        {
            var sheets = PanelSheets.Of(trial, settings.Panel, key: plan)
                .SaveTo(Path.Combine(settings.Folder, "sheets"), settings.KeyFolder);
            console.WriteLine($"{sheets.Count} sheets for the printer are in {Path.Combine(settings.Folder, "sheets")}; those in "
                + $"{(settings.KeyFolder is null ? "its folder sealed" : $"the folder sealed of {settings.KeyFolder}")} show which beer "
                + $"is which.");
        }
        catch (TrialIncompleteException missing)
        {
            console.WriteLine($"No sheets were printed. {missing.Message} Then run this again.");
        }

        console.WriteLine($"Next step: type each answer into {Path.Combine(settings.Folder, BallotFile.NameOf(plan.Panel))}, then: "
            + $"splitbatch close {settings.Folder} --panel "
            + $"{plan.Panel}{(settings.KeyFolder is null ? "" : $" --key-folder {settings.KeyFolder}")}");
        console.WriteLine(panel.Custody.IsSealed
            ? $"Before you pour, publish the fingerprint of the plan, as only that proves to a stranger when it was fixed: "
                + $"{panel.Custody.Digits} (to read aloud: {panel.Custody.Fingerprint})"
            : "The plan of this panel was not sealed, so nobody can check when it was fixed.");
        return 0;
    }

    /// <summary>The folder and the panel.</summary>
    public sealed class Settings : PanelSettings
    {
        /// <summary>Where the key is kept.</summary>
        [CommandOption("--key-folder <FOLDER>")]
        [Description("Keep key, seed and sealed sheets in this folder, apart from the trial's, which then holds the key's fingerprint. "
            + "The close asks for it.")]
        public string? KeyFolder { get; init; }
    }
}
