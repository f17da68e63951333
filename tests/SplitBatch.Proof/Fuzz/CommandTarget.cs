using Spectre.Console.Testing;
using SplitBatch.Cli;
using SplitBatch.Trials.Files;

namespace SplitBatch.Proof.Fuzz;

/// <summary>The command line: its own words in any order, with good and spoilt values, below one scratch folder.</summary>
internal sealed class CommandTarget : Target
{
    private static readonly string[] Verbs = ["run", "preview", "new", "check", "declare", "amend", "serve", "close", "look-early",
        "verify-seal", "list", "write-up", "workshop", "kernel", "help", ""];

    private static readonly string[] Options =
    [
        "--out", "-o", "--trial", "-t", "--set", "-s", "--timeout", "--pictures", "--title", "--question", "--variable", "--half-a",
        "--half-b", "--units", "--decimals", "--target", "--volume", "--gravity",
        "--protocol", "--tasters", "--margin", "--panel", "--yes", "-y", "--help", "--version", "--nonsense", "--", "-", "install",
        "remove", "start", "--connection-file",
    ];

    private readonly string scratch;
    private readonly string[] values;

    /// <param name="demo">The folder of demo trials, of which one is copied.</param>
    /// <param name="scratch">A folder to work in; it must exist.</param>
    public CommandTarget(string demo, string scratch)
    {
        this.scratch = scratch;
        string trial = Path.Combine(scratch, "good-trial"), source = Directory.GetDirectories(demo).Order(StringComparer.Ordinal).First();
        new TrialFolder(source).CopyTo(trial);
        File.WriteAllText(Path.Combine(scratch, "empty.ipynb"), """{"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[]}""");
        File.WriteAllText(Path.Combine(scratch, "broken.ipynb"), "{");
        values =
        [
            trial, Path.Combine(scratch, "empty.ipynb"), Path.Combine(scratch, "broken.ipynb"), Path.Combine(scratch, "missing"),
            Path.Combine(trial, "hops.csv"), "32", "0", "-1", "1e9", "NaN", "0.3", "30 %", "1.050",
            "1050", "12 P", "us", "metric", "point", "comma", "triangle", "tetrad", "main", "x=1", "trialFolder=", "=", "", " ", "\0",
            "a\nb", new string('x', 5000), "🍺", "[red]", "[/]", "{0}",
        ];
    }

    public override string Name => "command line";

    protected override string? Try(int seed)
    {
        var mutator = new Mutator(seed);
        string made = Path.Combine(scratch, $"made-{seed % 50}");
        var words = Words(mutator, made);
        using var console = new TestConsole();
        string here = Directory.GetCurrentDirectory();
        Directory.SetCurrentDirectory(scratch);
        try
        {
            int code = SplitBatchApp.RunAsync(words, console).GetAwaiter().GetResult();
            string said = console.Output;
            string call = Call(words);
            return code is not (0 or 1 or 2) ? $"exit code {code}: {call}"
                : code != 0 && said.Length == 0 ? $"exit code {code} without a word: {call}"
                : Find.RuntimeWordsIn(said) is { } runtime ? $"a message in the runtime's words (\"{runtime}\"): {call}: {said.Trim()}"
                : null;
        }
        finally
        {
            Directory.SetCurrentDirectory(here);
            if (Directory.Exists(made) && mutator.Below(4) == 0) Directory.Delete(made, recursive: true);
        }
    }

    protected override string Describe(int seed) => Call(Words(new Mutator(seed), "made"));

    private List<string> Words(Mutator mutator, string made)
    {
        List<string> words = [mutator.Of(Verbs)];
        int count = mutator.Below(7);
        for (int i = 0; i < count; i++) words.Add(mutator.Below(2) == 0 ? mutator.Of(Options) : mutator.Of(values));
        if (words[0] == "new" && mutator.Below(2) == 0) words.Insert(1, made);
        if (words[0] == "new") words.Add("--yes"); // Nobody is there to answer questions.
        // Nothing outside may be touched, and an install takes minutes.
        if (words[0] == "kernel") words.AddRange(["--prefix", scratch + "/missing"]);
        if (words[0] is "run" or "preview") words.AddRange(["--out", made]);
        return words;
    }

    private static string Call(IEnumerable<string> words) =>
        string.Join(' ', words.Select(word => word.Length > 60 ? word[..60] + "..." : word));
}
