using System.Globalization;
using Spectre.Console;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli;

/// <summary>Shows how a run goes on: a bar for each notebook on a terminal, a line for each when the output goes to a file.</summary>
internal static class RunProgress
{
    public static Task<T> ShowAsync<T>(IAnsiConsole console, Func<Action<BatchProgress>, Task<T>> run) =>
        console.Profile.Capabilities.Interactive && console.Profile.Capabilities.Ansi
            ? BarsAsync(console, run)
            : run(step => Line(console, step));

    private static void Line(IAnsiConsole console, BatchProgress step)
    {
        if (step is not NotebookEnded ended) return;
        var how = !ended.Outcome.Succeeded
            ? "failed"
            : string.Create(CultureInfo.InvariantCulture,
                $"{ended.Outcome.CodeCells} cells in "
                    + $"{Printed.Fixed(ended.Outcome.Duration.TotalSeconds, 1, "s")}"
                    + $"{(ended.Outcome.Waiting > 0 ? $", {ended.Outcome.Waiting} waiting for data" : "")}");
        console.WriteLine($"[{ended.Notebook}/{ended.Notebooks}] {ended.Name}: {how}");
    }

    private static Task<T> BarsAsync<T>(IAnsiConsole console, Func<Action<BatchProgress>, Task<T>> run) => console.Progress()
        .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new ElapsedTimeColumn())
        .StartAsync(async progress =>
        {
            var bars = new Dictionary<int, ProgressTask>();
            return await run(step =>
            {
                switch (step)
                {
                    case NotebookStarted started:
                        bars[step.Notebook] = progress.AddTask(Markup.Escape(step.Name), maxValue: Math.Max(1, started.Cells));
                        break;
                    case CellStarted cell:
                        bars[step.Notebook].Value = cell.Cell - 1;
                        bars[step.Notebook].Description = Markup.Escape($"{cell.Name}  cell {cell.Cell} of {cell.Cells}");
                        break;
                    case NotebookEnded ended when bars.TryGetValue(step.Notebook, out var bar):
                        bar.Description = Markup.Escape(ended.Outcome.Succeeded ? ended.Name : $"{ended.Name}  failed");
                        if (ended.Outcome.Succeeded) bar.Value = bar.MaxValue;
                        bar.StopTask();
                        break;
                }
            });
        });
}
