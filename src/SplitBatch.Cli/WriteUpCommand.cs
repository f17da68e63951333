using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Display.WriteUp;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch write-up</c>: the write-up of a trial folder, or of several, in every format.</summary>
public sealed class WriteUpCommand(IAnsiConsole console) : Command<WriteUpCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        foreach (var made in WriteUps.Make(settings.Folders, settings.Output))
        {
            console.WriteLine(made.Document.ToString());
            console.WriteLine($"  {Path.Combine(settings.Output, made.Name, "write-up.html")}, and beside it the same as .md and .docx, "
                + $"with figures, tables and summary pictures.");
        }

        return 0;
    }

    /// <summary>The trials, and where their write-ups go.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The trial folders.</summary>
        [CommandArgument(0, "<FOLDERS>")]
        [Description("Trial folders. Nothing in them is changed.")]
        public string[] Folders { get; init; } = [];

        /// <summary>The folder for the write-ups.</summary>
        [CommandOption("-o|--out <FOLDER>")]
        [Description("Where the write-ups go, each in a folder of its trial's name. A file that a person has changed there is kept beside "
            + "the new one.")]
        [DefaultValue("out")]
        public string Output { get; init; } = "out";

        /// <inheritdoc/>
        public override ValidationResult Validate() =>
            Folders.FirstOrDefault(folder => !Directory.Exists(folder)) is { } missing
                ? ValidationResult.Error($"There is no folder {missing}.")
                : ValidationResult.Success();
    }
}
