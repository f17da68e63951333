using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch workshop</c>: the learner's and the instructor's notebooks out of one source.</summary>
public sealed class WorkshopCommand(IAnsiConsole console) : Command<WorkshopCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        try
        {
            foreach (var name in WorkshopFolder.Write(settings.Folder)) console.WriteLine(name);
            return 0;
        }
        catch (NotebookException error)
        {
            console.Complain(error.Message);
            return 2;
        }
    }

    /// <summary>Which folder.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The workshop's folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("A folder that holds a folder source; the learner's notebooks are written into it, the instructor's into its folder "
            + "instructor.")]
        public string Folder { get; init; } = "";
    }
}
