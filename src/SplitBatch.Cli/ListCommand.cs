using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch list</c>: several trials in one place, with what became of each.</summary>
public sealed class ListCommand(IAnsiConsole console) : Command<ListCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var list = TrialList.In(settings.Folder);
        foreach (var trial in list.Trials) console.WriteLine(trial.ToString());
        foreach (var left in list.LeftOut) console.WriteLine($"left out: {left}");
        console.WriteLine(list.ToString());
        return 0;
    }

    /// <summary>The folder.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The folder that holds trial folders.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The folder that holds the trial folders. Nothing in it is changed.")]
        public required string Folder { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() => SealReport.FolderIsThere(Folder);
    }
}
