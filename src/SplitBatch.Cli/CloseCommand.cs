using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch close</c>: no ballot is waited for any more, and the count may be known.</summary>
public sealed class CloseCommand(IAnsiConsole console) : Command<CloseCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var trial = Trial.Open(settings.Folder).Close(settings.Panel, settings.ClosedOn, settings.KeyFolder, settings.Who ?? "");
        var panel = trial.Panel(settings.Panel);
        console.WriteLine($"Panel {panel.Name} is closed.");
        foreach (var departure in panel.Departures.Where(departure => !departure.IsOfASealedPlan)) console.WriteLine(departure.ToString());
        console.WriteLine(panel.InWords);
        console.WriteLine($"Next step: splitbatch write-up {settings.Folder}");
        return 0;
    }

    /// <summary>The folder, the panel and the day.</summary>
    public sealed class Settings : PanelSettings
    {
        /// <summary>The day.</summary>
        [CommandOption("--day <DATE>")]
        [Description("The day of the close, as 2026-05-02; today when left out.")]
        public string? Day { get; init; }

        /// <summary>Where the key is.</summary>
        [CommandOption("--key-folder <FOLDER>")]
        [Description("Where the key was kept apart. It is compared with its fingerprint before anything is counted.")]
        public string? KeyFolder { get; init; }

        /// <summary>Who.</summary>
        [CommandOption("--who <NAME>")]
        [Description("Who closes the panel.")]
        public string? Who { get; init; }

        internal DateOnly? ClosedOn => Day is null ? null : DateOnly.ParseExact(Day, "yyyy-MM-dd", CultureInfo.InvariantCulture);

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            Day is not null && !DateOnly.TryParseExact(Day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
                ? ValidationResult.Error($"--day \"{Day}\" is no day; write it as 2026-05-02.")
                : base.Validate();
    }
}
