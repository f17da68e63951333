using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials.Scaffold;

namespace SplitBatch.Cli;

/// <summary><c>splitbatch new</c>: the folder of one's own trial.</summary>
public sealed class NewCommand(IAnsiConsole console) : Command<NewCommand.Settings>
{
    /// <summary>Where the notebooks lie that come with the command.</summary>
    internal static string Notebooks => Path.Combine(AppContext.BaseDirectory, "notebooks");

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var given = settings.Given();
        var asks = console.Profile.Capabilities.Interactive && !settings.Yes;
        var open = TrialQuestions.All.Where(question => question.NeedsAnswer && given[question.Name] is null)
            .Select(question => "--" + question.Name).ToList();
        if (!asks && open.Count > 0)
        {
            console.Complain($"There is nobody to ask, so give {string.Join(", ", open)}; or run it in a terminal without --yes.");
            return 2;
        }

        if (asks)
            console.WriteLine("A few questions. Press Enter to accept the answer in parentheses; you can change everything in the "
                + "files later.");
        var trial = new NewTrial();
        foreach (var question in TrialQuestions.All)
        {
            try
            {
                trial = given[question.Name] is { } answer ? question.Take(trial, answer) : asks ? Ask(question, trial) : trial;
            }
            catch (ArgumentException error)
            {
                console.Complain($"--{question.Name}: {Sentence(error)}");
                return 2;
            }
        }

        var receipt = TrialScaffold.Write(trial, settings.Folder, Notebooks);
        console.WriteLine($"Made {settings.Folder} with {receipt.Files.Count} files; {Path.Combine(settings.Folder, "README.md")} says "
            + $"what each is for.");
        console.WriteLine(ScaffoldReceipt.NextStep(settings.Folder));
        return 0;
    }

    private NewTrial Ask(TrialQuestion question, NewTrial trial)
    {
        while (true)
        {
            var prompt = new TextPrompt<string>(question.Ask.EscapeMarkup());
            if (!question.NeedsAnswer) prompt.DefaultValue(question.Suggest(trial));
            try
            {
                return question.Take(trial, console.Prompt(prompt));
            }
            catch (ArgumentException error)
            {
                console.Complain(Sentence(error));
            }
        }
    }

    /// <summary>The message without the name of the parameter that the runtime adds.</summary>
    private static string Sentence(ArgumentException error) => error.Message.Split(" (Parameter '")[0];

    /// <summary>The folder, and an option for each question.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The folder to make.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The folder to make; it may be there already if it is empty.")]
        public required string Folder { get; init; }

        /// <summary>The title.</summary>
        [CommandOption("--title <TEXT>")]
        [Description("What the trial is called.")]
        public string? Title { get; init; }

        /// <summary>The variable.</summary>
        [CommandOption("--variable <TEXT>")]
        [Description("The one thing that differs between the halves.")]
        public string? Variable { get; init; }

        /// <summary>Half A.</summary>
        [CommandOption("--half-a <NAME>")]
        [Description("What half A is called, the one brewed as usual.")]
        public string? A { get; init; }

        /// <summary>Half B.</summary>
        [CommandOption("--half-b <NAME>")]
        [Description("What half B is called, the changed one.")]
        public string? B { get; init; }

        /// <summary>The question.</summary>
        [CommandOption("--question <TEXT>")]
        [Description("The question as one sentence; made of the names when left out.")]
        public string? Question { get; init; }

        /// <summary>Units.</summary>
        [CommandOption("--units <UNITS>")]
        [Description("metric (the default) or us.")]
        public string? Units { get; init; }

        /// <summary>Decimals.</summary>
        [CommandOption("--decimals <MARK>")]
        [Description("How CSV files write decimals: point (the default) or comma.")]
        public string? Decimals { get; init; }

        /// <summary>Volume.</summary>
        [CommandOption("--volume <NUMBER>")]
        [Description("Wort of one half at the end of the boil, measured cool, in L or gal.")]
        public string? Volume { get; init; }

        /// <summary>Gravity.</summary>
        [CommandOption("--gravity <NUMBER>")]
        [Description("Its gravity then: 1.050, or \"12.4 P\" for degrees Plato.")]
        public string? Gravity { get; init; }

        /// <summary>Target.</summary>
        [CommandOption("--target <IBU>")]
        [Description("The bitterness both halves aim at.")]
        public string? Target { get; init; }

        /// <summary>Allergens.</summary>
        [CommandOption("--allergens <WORDS>")]
        [Description("What in the beers may harm somebody, with commas, such as \"barley, lactose\" or \"none but barley\"; no sheet is "
            + "printed until this is said.")]
        public string? Allergens { get; init; }

        /// <summary>Protocol.</summary>
        [CommandOption("--protocol <NAME>")]
        [Description("The panel's test, such as triangle (the default), duo-trio or tetrad.")]
        public string? Protocol { get; init; }

        /// <summary>Margin.</summary>
        [CommandOption("--margin <SHARE>")]
        [Description("The share of people who can tell that would matter: 0.30 is three in ten.")]
        public string? Margin { get; init; }

        /// <summary>Tasters.</summary>
        [CommandOption("--tasters <NUMBER>")]
        [Description("How many people will taste; as many as a power of 80 % needs when left out.")]
        public string? Tasters { get; init; }

        /// <summary>Ask nothing.</summary>
        [CommandOption("-y|--yes")]
        [Description("Ask nothing; what is left out takes its default.")]
        public bool Yes { get; init; }

        /// <summary>The answers that were given, by the question's name.</summary>
        internal IReadOnlyDictionary<string, string?> Given() => new Dictionary<string, string?>
        {
            ["title"] = Title, ["variable"] = Variable, ["half-a"] = A, ["half-b"] = B, ["question"] = Question, ["units"] = Units,
            ["decimals"] = Decimals,
            ["volume"] = Volume, ["gravity"] = Gravity, ["target"] = Target, ["allergens"] = Allergens, ["protocol"] = Protocol,
            ["margin"] = Margin, ["tasters"] = Tasters,
        };
    }
}
