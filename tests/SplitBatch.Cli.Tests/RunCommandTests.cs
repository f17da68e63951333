using Spectre.Console;

namespace SplitBatch.Cli;

public sealed class RunCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("run-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_good_notebook_gives_exit_code_0_and_its_files()
    {
        var (code, said) =
            await Run("run", Write("good.ipynb", "var tasters = 24;", "tasters + 1"), "--out", At("out"), "--set", "tasters=36");
        Assert.True(code == 0, said);
        Assert.StartsWith("[1/1] good: 3 cells in ", said, StringComparison.Ordinal);
        Assert.Contains("\"37\"", await File.ReadAllTextAsync(At("out", "good.ipynb")), StringComparison.Ordinal);
        Assert.True(File.Exists(At("out", "good.html")) && File.Exists(At("out", "index.html")));
    }

    [Fact]
    public async Task A_failing_cell_gives_exit_code_1_with_notebook_cell_first_lines_and_error()
    {
        var path = Write("broken.ipynb", "var tasters = 24;", "// one too many\nvar sum = tasters + nothing;");
        var (code, said) = await Run("run", path, "--out", At("out"));
        Assert.Equal(1, code);
        Assert.Contains($"{path}, cell 2: CompilationError", said, StringComparison.Ordinal);
        Assert.Contains("    // one too many\n    var sum = tasters + nothing;", said, StringComparison.Ordinal);
        Assert.Contains("CS0103: The name 'nothing' does not exist", said, StringComparison.Ordinal);
        Assert.Contains("What ran before it is kept in", said, StringComparison.Ordinal);
        Assert.True(File.Exists(At("out", "broken.ipynb")));
    }

    [Fact]
    public async Task An_endless_cell_is_stopped_by_the_limit()
    {
        var (code, said) =
            await Run("run", Write("endless.ipynb", "var a = 1;", "while (true) { }"), "--out", At("out"), "--timeout", "0.5");
        Assert.Equal(1, code);
        Assert.Contains("ran longer than its limit of 0.5 s", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_notebook_starts_afresh()
    {
        Write("1.ipynb", "var left = 1;",
            "Microsoft.DotNet.Interactive.Formatting.Formatter.Register<string>(s => \"changed\", \"text/plain\"); left");
        Write("2.ipynb", "\"as it is\"", "left");
        var (code, said) = await Run("run", folder, "--out", At("out"));
        Assert.Equal(1, code);
        Assert.Contains("2.ipynb, cell 2: CompilationError", said, StringComparison.Ordinal);
        Assert.Contains("\"as it is\"\n", await File.ReadAllTextAsync(At("out", "2.ipynb")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_notebook_that_is_none_gives_exit_code_1_and_the_reason()
    {
        await File.WriteAllTextAsync(At("bad.ipynb"), "not JSON");
        var (code, said) = await Run("run", At("bad.ipynb"), "--out", At("out"));
        Assert.Equal(1, code);
        Assert.Contains("not valid JSON at line 1", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is no file or folder", "run", "nowhere")]
    [InlineData("run", "run")]
    [InlineData("--nonsense", "run", ".", "--nonsense")]
    [InlineData("nonsense", "nonsense")]
    [InlineData("write it as name=value", "run", ".", "--set", "tasters")]
    [InlineData("is given more than once", "run", ".", "--set", "a=1", "--set", "a=2")]
    [InlineData("accepted are seconds", "run", ".", "--timeout", "-3")]
    [InlineData("there is no folder nowhere", "run", ".", "--trial", "nowhere")]
    public async Task A_wrong_call_gives_exit_code_2_and_names_what_is_wrong(string expected, params string[] args)
    {
        var (code, said) = await Run(args);
        Assert.True(code == 2, said);
        Assert.Contains(expected, said, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Help_shows_an_example()
    {
        var (code, said) = await Run("run", "--help");
        Assert.Equal(0, code);
        Assert.Contains("splitbatch run notebooks --out out", said, StringComparison.Ordinal);
        Assert.Contains("--timeout <SECONDS>", said, StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Said)> Run(params string[] args)
    {
        using var text = new StringWriter();
        var console = AnsiConsole.Create(
            new AnsiConsoleSettings { Ansi = AnsiSupport.No, Interactive = InteractionSupport.No, Out = new AnsiConsoleOutput(text) });
        console.Profile.Width = 1000;
        var code = await SplitBatchApp.RunAsync(args, console);
        return (code, text.ToString().ReplaceLineEndings("\n"));
    }

    private string At(params string[] parts) => Path.Combine([folder, .. parts]);

    private string Write(string name, string parameters, string cell)
    {
        var path = At(name);
        var cells = new (string Source, string Tags)[] { (parameters, "\"parameters\""), (cell, "") }.Select(one =>
            $$"""{"cell_type":"code","execution_count":null,"metadata":{"tags":[{{one.Tags}}]},"outputs":[],"""
            + $$""" "source":{{System.Text.Json.JsonSerializer.Serialize(one.Source)}}}""");
        File.WriteAllText(path, $$"""{"cells":[{{string.Join(',', cells)}}],"metadata":{},"nbformat":4,"nbformat_minor":4}""");
        return path;
    }
}
