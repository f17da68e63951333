using Spectre.Console;
using Spectre.Console.Testing;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Cli.Commands;

/// <summary><c>splitbatch new</c> and <c>splitbatch check</c> as a person calls them.</summary>
public sealed class NewAndCheckTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("cli-");

    public void Dispose() => root.Delete(recursive: true);

    private string Mine => Path.Combine(root.FullName, "mine");

    private static async Task<(int Code, string Text)> Run(TestConsole console, params string[] args)
    {
        console.Profile.Width = 1000;
        var code = await SplitBatchApp.RunAsync(args, console);
        return (code, console.Output);
    }

    private static Task<(int Code, string Text)> Run(params string[] args) => Run(new TestConsole(), args);

    private Task<(int Code, string Text)> New(params string[] more) =>
        Run(["new", Mine, "--title", "Cold or warm?", "--variable", "dry hop temperature", "--half-a", "cold", "--half-b", "warm",
            "--yes", .. more]);

    [Fact]
    public async Task A_folder_is_made_from_options_and_the_last_line_says_the_next_step()
    {
        var (code, text) = await New("--units", "us", "--gravity", "12.4 P", "--margin", "25 %");
        Assert.Equal(0, code);
        Assert.Equal($"Next step: write your hop lots into {Path.Combine(Mine, "hops.csv")}, then: splitbatch check {Mine}; when the plan "
            + $"is final: splitbatch declare {Mine}", text.TrimEnd().Split('\n')[^1]);
        var trial = Trial.Open(Mine);
        Assert.Equal((UnitSystem.Us, 0.25, "warm"), (trial.Description.Units, trial.Panel().Plan.Margin, trial.Description.Beers[Side.B]));
        Assert.Equal(5, trial.Kettle.FinalVolume.UsGallons, 6);
        Assert.Equal(12.4, trial.Kettle.FinalGravity.Plato, 2);
        Assert.NotEqual(0, trial.Panel().Plan.Seed);
    }

    [Fact]
    public async Task A_person_is_asked_and_asked_again_where_an_answer_cannot_be_used()
    {
        var console = new TestConsole().Interactive();
        string[] answers = ["Cones or pellets?", "form of the hop", "pellets", "cones", "", "metric", "comma", "22,5", "1050", "1,050", "",
            "lactos", "barley, lactose", "triangel", "triangle", "", "30"];
        foreach (var answer in answers) console.Input.PushTextWithEnter(answer);
        var (code, text) = await Run(console, "new", Mine);
        Assert.Equal(0, code);
        Assert.Contains("1050 looks like a hydrometer reading without its point: write 1.050.", text, StringComparison.Ordinal);
        Assert.Contains("Did you mean \"lactose\"?", text, StringComparison.Ordinal);
        Assert.Contains("Did you mean \"triangle\"?", text, StringComparison.Ordinal);
        var trial = Trial.Open(Mine);
        Assert.Equal(("Can tasters tell cones from pellets, when everything but the form of the hop is the same?", 30),
            (trial.Question, trial.Panel().Plan.Tasters));
        Assert.Equal(22.5, trial.Kettle.FinalVolume.Liters, 9);
        Assert.Equal(DecimalMark.Comma, trial.Description.Decimals);
        Assert.Equal(["barley", "lactose"], trial.Description.Allergens!.Words);
    }

    [Fact]
    public async Task Where_nobody_can_be_asked_the_missing_options_are_named()
    {
        var (code, text) = await Run("new", Mine, "--title", "T", "--half-a", "x");
        Assert.Equal(2, code);
        Assert.Contains("give --variable, --half-b;", text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Mine));
    }

    [Fact]
    public async Task A_wrong_option_is_a_wrong_call_and_nothing_is_written()
    {
        var (code, text) = await New("--gravity", "1050");
        Assert.Equal(2, code);
        Assert.Contains("--gravity: 1050 is not a specific gravity", text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Mine));
    }

    [Fact]
    public async Task A_folder_that_holds_files_is_left_alone_and_the_command_fails()
    {
        await New();
        var before = File.ReadAllText(Path.Combine(Mine, "trial.json"));
        var (code, text) = await New("--tasters", "12");
        Assert.Equal(1, code);
        Assert.Contains("The folder \"mine\" holds files, so nothing was written; name a new or an empty folder.", text,
            StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(Mine, "trial.json")));
    }

    [Fact]
    public async Task A_new_folder_passes_the_check_with_two_warnings()
    {
        await New();
        var (code, text) = await Run("check", Mine);
        Assert.Equal(0, code);
        Assert.StartsWith("warning: trial.json, panels[0].declared: The plan of panel main is not sealed yet.", text,
            StringComparison.Ordinal);
        Assert.Equal("mine: no fault, 2 warnings. The trial can be used as it stands.", text.TrimEnd().Split('\n')[^1]);
    }

    [Fact]
    public async Task Faults_come_first_with_their_place_and_the_exit_code_is_one()
    {
        await New();
        await File.AppendAllTextAsync(Path.Combine(Mine, "hops.csv"), "mine,pelets,6.0\nyours,pellets,six\n");
        var (code, text) = await Run("check", Mine);
        Assert.Equal(1, code);
        var lines = text.TrimEnd().Split('\n');
        Assert.Equal("fault: hops.csv, row 8, form = \"pelets\": The word is not known here. Accepted: whole cones, pellets, lupulin "
            + "pellets, isomerised pellets, CO2 extract, iso extract, oil. Did you mean \"pellets\"?", lines[0]);
        Assert.Equal("fault: hops.csv, row 9, alpha [%] = \"six\": \"six\" is not a number. Accepted: a number between 0 "
            + "and 90.", lines[1]);
        Assert.Equal("mine: 2 faults. The notebooks will not open it until the faults are mended; some checks only run then.", lines[^1]);
    }

    [Fact]
    public async Task In_a_terminal_each_fault_is_a_block()
    {
        await New();
        await File.AppendAllTextAsync(Path.Combine(Mine, "hops.csv"), "mine,pelets,6.0\n");
        var console = new TestConsole();
        console.Profile.Out = new TerminalOutput(console.Profile.Out);
        var (_, text) = await Run(console, "check", Mine);
        Assert.Contains("fault  hops.csv, row 8, form", text, StringComparison.Ordinal);
        Assert.Matches(@"found\s{2,}pelets", text);
        Assert.Contains("accepted  whole cones, pellets", text, StringComparison.Ordinal);
        Assert.Matches(@"try\s+Did you mean ""pellets""\?", text);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("check", "no-such-folder")]
    [InlineData("check", "mine", "--frobnicate")]
    [InlineData("new")]
    public async Task A_wrong_call_ends_with_two(params string[] args) => Assert.Equal(2, (await Run(args)).Code);

    private sealed class TerminalOutput(IAnsiConsoleOutput inner) : IAnsiConsoleOutput
    {
        public TextWriter Writer => inner.Writer;

        public bool IsTerminal => true;

        public int Width => inner.Width;

        public int Height => inner.Height;

        public void SetEncoding(System.Text.Encoding encoding) => inner.SetEncoding(encoding);
    }
}
