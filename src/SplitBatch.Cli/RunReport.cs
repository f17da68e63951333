using Spectre.Console;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli;

/// <summary>The last words of a run: where the results are, or which cell failed and how.</summary>
internal static class RunReport
{
    public static void Write(IAnsiConsole console, IReadOnlyList<NotebookOutcome> outcomes, string output)
    {
        foreach (var outcome in outcomes.Where(o => !o.Succeeded)) Failure(console, outcome, output);
        if (outcomes.Sum(o => o.Waiting) is > 0 and var waiting)
        {
            console.WriteLine($"{(waiting == 1 ? "1 cell waits" : $"{waiting} cells wait")} for data that are not there yet; each page "
                + $"says what is missing and which step makes it.");
        }

        if (outcomes.Any(o => o.HasPage)) console.WriteLine($"Open {Path.Combine(output, "index.html")} in a browser.");
    }

    private static void Failure(IAnsiConsole console, NotebookOutcome outcome, string output)
    {
        if (outcome.Problem is { } problem)
        {
            console.Complain($"{outcome.Path}: {problem}");
            return;
        }

        var failure = outcome.Failure!;
        console.Complain($"{outcome.Path}, cell {failure.Cell}: {failure.Error.Name}");
        foreach (var line in failure.FirstLines) console.WriteLine($"    {line}");
        console.WriteLine();
        foreach (var line in failure.Error.Traceback) console.WriteLine($"  {line}");
        console.WriteLine();
        console.WriteLine($"What ran before it is kept in {Path.Combine(output, outcome.Name)}.ipynb and .html.");
    }

    /// <summary>Says what is wrong.</summary>
    public static void Complain(this IAnsiConsole console, string message)
    {
        console.Markup("[red]Error:[/] ");
        console.WriteLine(message);
    }
}
