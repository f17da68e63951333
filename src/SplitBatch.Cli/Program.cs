using Spectre.Console;
using SplitBatch.Cli;

// A pattern that never comes to an end cannot be stopped from outside: it gives up by itself. Read by the first pattern of the process.
AppContext.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(5));

if (KernelStartCommand.TryStart(args) is { } code)
{
    Environment.Exit(code); // A cell may still be running, on a thread of its own.
}

// Made before any kernel starts: cells then have a console of their own, and this one stays the process's.
var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Out) });
if (Console.IsOutputRedirected) console.Profile.Width = 1000; // A file is read by programs, too: no wrapping.
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = !stop.IsCancellationRequested; // The first time the run ends in order; the second time at once.
    stop.Cancel();
};
Environment.Exit(await SplitBatchApp.RunAsync(args, console, stop.Token));
