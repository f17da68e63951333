using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch preview</c>: results and pictures for notebooks under version control.</summary>
public sealed class PreviewCommand(IAnsiConsole console) : AsyncCommand<PreviewCommand.Settings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        try
        {
            var outcomes = await RunProgress.ShowAsync(console,
                tell => PreviewRun.RunAsync(settings.Folder, settings.Pictures, tell, cancellationToken));
            foreach (var failed in outcomes.Where(outcome => !outcome.Succeeded))
                console.Complain($"{failed.Path} failed, so no notebook was changed. Run it with: splitbatch run {settings.Folder}");
            return outcomes.All(outcome => outcome.Succeeded) ? 0 : 1;
        }
        catch (NotebookException error)
        {
            console.Complain(error.Message);
            return 2;
        }
    }

    /// <summary>Which notebooks, and where the pictures go.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The folder of notebooks.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("A folder of notebooks; results are written into them.")]
        public string Folder { get; init; } = "";

        /// <summary>The folder for pictures.</summary>
        [CommandOption("-p|--pictures <FOLDER>")]
        [Description("Where the write-up's pictures go, for a page that shows them.")]
        public string? Pictures { get; init; }
    }
}
