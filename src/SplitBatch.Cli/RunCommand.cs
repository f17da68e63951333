using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch run</c>: notebooks from start to end, without anybody watching.</summary>
public sealed class RunCommand(IAnsiConsole console) : AsyncCommand<RunCommand.Settings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        try
        {
            var outcomes = await RunProgress.ShowAsync(console,
                tell => BatchRunner.RunAsync(settings.Request(), tell, cancellation: cancellationToken));
            RunReport.Write(console, outcomes, settings.Output);
            return outcomes.All(o => o.Succeeded) ? 0 : 1;
        }
        catch (NotebookException error)
        {
            console.Complain(error.Message);
            return 2;
        }
        catch (OperationCanceledException)
        {
            console.Complain($"Stopped. What ran before is kept in {settings.Output}.");
            return 1;
        }
    }

    /// <summary>What to run, and where to.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>Notebooks and folders of notebooks.</summary>
        [CommandArgument(0, "<PATHS>")]
        [Description("Notebooks (.ipynb), or folders of notebooks; a folder's are run in the order of their names.")]
        public string[] Paths { get; init; } = [];

        /// <summary>The folder for the results.</summary>
        [CommandOption("-o|--out <FOLDER>")]
        [Description("Where executed notebooks, pages and the working copy of the trial go. Files of an earlier run are replaced.")]
        [DefaultValue("out")]
        public string Output { get; init; } = "out";

        /// <summary>The trial folder.</summary>
        [CommandOption("-t|--trial <FOLDER>")]
        [Description("The trial to open in place of the notebooks' own. A working copy is used; the folder itself is not changed.")]
        public string? Trial { get; init; }

        /// <summary>Parameters.</summary>
        [CommandOption("-s|--set <NAME=VALUE>")]
        [Description("A value for the cell tagged \"parameters\"; may be given several times.")]
        public string[] Set { get; init; } = [];

        /// <summary>The longest a cell may run.</summary>
        [CommandOption("--timeout <SECONDS>")]
        [Description("The longest one cell may run; 0 for no limit.")]
        [DefaultValue(600.0)]
        public double Timeout { get; init; } = 600;

        /// <inheritdoc/>
        public override ValidationResult Validate()
        {
            if (Set.FirstOrDefault(s => s.IndexOf('=', StringComparison.Ordinal) < 1) is { } bad)
                return ValidationResult.Error($"--set {bad}: write it as name=value, for example --set tasters=24.");
            if (Set.Select(NameOf).GroupBy(n => n).FirstOrDefault(g => g.Count() > 1) is { } twice)
                return ValidationResult.Error($"--set {twice.Key} is given more than once.");
            if (!(Timeout >= 0 && Timeout <= 1_000_000))
                return ValidationResult.Error(
                    $"--timeout {Timeout.ToString(CultureInfo.InvariantCulture)}: accepted are seconds from 0 (no limit) to 1000000.");
            return Trial is { } trial && !Directory.Exists(trial)
                ? ValidationResult.Error($"--trial: there is no folder {trial}.")
                : ValidationResult.Success();
        }

        internal BatchRequest Request() => new(Paths, Output)
        {
            Trial = Trial,
            Set = Set.ToDictionary(NameOf, s => s[(s.IndexOf('=', StringComparison.Ordinal) + 1)..]),
            CellLimit = Timeout > 0 ? TimeSpan.FromSeconds(Timeout) : null,
        };

        private static string NameOf(string set) => set[..set.IndexOf('=', StringComparison.Ordinal)].Trim();
    }
}
