using Spectre.Console;
using Spectre.Console.Cli;

namespace SplitBatch.Cli;

/// <summary>The <c>splitbatch</c> command: its words, and what its exit codes mean.</summary>
public static class SplitBatchApp
{
    /// <summary>Runs the command. Answers 0 when all went well, 1 when the work failed, 2 when the call was wrong.</summary>
    /// <param name="args">The words after <c>splitbatch</c>.</param>
    /// <param name="console">Where it speaks.</param>
    /// <param name="cancellation">Stops it.</param>
    public static async Task<int> RunAsync(IEnumerable<string> args, IAnsiConsole console, CancellationToken cancellation = default)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("splitbatch");
            config.SetApplicationVersion(typeof(SplitBatchApp).Assembly.GetName().Version!.ToString(3));
            config.ConfigureConsole(console);
            config.UseStrictParsing();
            config.SetExceptionHandler((error, _) => Explain(console, error));
            config.AddCommand<RunCommand>("run")
                .WithDescription("Run notebooks from start to end and make a page of each. Exit code 0: all ran; 1: a cell failed; 2: the "
                    + "call was wrong.")
                .WithExample("run", "notebooks", "--out", "out")
                .WithExample("run", "notebooks/2-hop-charges.ipynb", "--trial", "my-trial", "--set", "target=32");
            config.AddCommand<PreviewCommand>("preview")
                .WithDescription("Run a folder of notebooks and keep their results in them, without scripts, for a code host's preview.")
                .WithExample("preview", "notebooks", "--pictures", "notebooks/pictures");
            config.AddCommand<NewCommand>("new")
                .WithDescription("Make the folder of a trial of your own: asks a few questions, or takes the answers as options.")
                .WithExample("new", "my-trial")
                .WithExample("new", "my-trial", "--title", "\"Warm or cold dry hops?\"", "--variable", "\"dry hop temperature\"",
                    "--half-a", "cold", "--half-b", "warm", "--units", "us", "--yes");
            config.AddCommand<CheckCommand>("check")
                .WithDescription("List everything wrong or doubtful in a trial folder. Exit code 0: no fault, perhaps warnings; 1: "
                    + "faults; 2: the call was wrong.")
                .WithExample("check", "my-trial");
            config.AddCommand<DeclareCommand>("declare")
                .WithDescription("Show the plan in plain words, with what it can and cannot find out, and seal it. Exit code 0: sealed; "
                    + "1: not sealed; 2: the call was wrong.")
                .WithExample("declare", "my-trial");
            config.AddCommand<AmendCommand>("amend")
                .WithDescription(
                    "Put a change of a sealed plan on record, with the reason; after the first ballot it goes before the result.")
                .WithExample("amend", "my-trial", "--because", "\"two tasters are ill\"");
            config.AddCommand<ServeCommand>("serve")
                .WithDescription("Draw the serving orders and codes of a sealed panel, and print its sheets; a key that is there is kept.")
                .WithExample("serve", "my-trial")
                .WithExample("serve", "my-trial", "--key-folder", "kept-apart");
            config.AddCommand<CloseCommand>("close")
                .WithDescription("Close a panel: no ballot is waited for any more, and its count may be known.")
                .WithExample("close", "my-trial", "--panel", "main", "--day", "2026-05-02");
            config.AddCommand<LookEarlyCommand>("look-early")
                .WithDescription(
                    "Show the count of a panel that is still open. That somebody looked is kept, and stands before the result.")
                .WithExample("look-early", "my-trial", "--because", "\"the room has to be left at ten\"");
            config.AddCommand<VerifySealCommand>("verify-seal")
                .WithDescription("Check the seals of a trial's published files, and a fingerprint from elsewhere. Exit code 0: all fits; "
                    + "1: it does not.")
                .WithExample("verify-seal", "my-trial", "--fingerprint", "\"3f9a 0c2b 77d1 e4a0 9b3c\"");
            config.AddCommand<ListCommand>("list")
                .WithDescription("List the trials in a folder: what was asked, what is sealed, counted, reported, and what was declared "
                    + "and never reported.")
                .WithExample("list", "my-trials");
            config.AddCommand<WriteUpCommand>("write-up")
                .WithDescription("Write up trial folders, without a notebook: a page, Markdown, a word-processor file, figures, tables "
                    + "and summary pictures of each.")
                .WithExample("write-up", "my-trial")
                .WithExample("write-up", "data-demo/amber-cone-or-pellet", "data-demo/stout-early-or-late",
                    "data-demo/lager-one-rest-or-two", "--out", "out");
            config.AddCommand<WorkshopCommand>("workshop")
                .WithDescription("Make the learner's and the instructor's notebooks of a workshop out of their one source.")
                .WithExample("workshop", "notebooks/workshop");
            config.AddKernel();
        });
        return await app.RunAsync(args, cancellation);
    }

    private static int Explain(IAnsiConsole console, Exception error)
    {
        if (error is CommandAppException { Pretty: { } pretty })
        {
            console.Write(pretty);
            return 2;
        }

        console.Complain(error.Message);
        return error is CommandAppException ? 2 : 1;
    }
}
